using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>What the person is told while an instrument is missing, and when it is back.</summary>
public static class MissingWords
{
    /// <summary>The instrument's name in the middle of a sentence.</summary>
    public static string Name(BenchInstrument instrument) => instrument == BenchInstrument.Meter ? "meter" : "fixture";

    /// <summary>Several instruments in a sentence.</summary>
    public static string Names(IEnumerable<BenchInstrument> instruments) => string.Join(" and the ", instruments.Order().Select(Name));

    /// <summary>Which instruments are missing, where, and what to look at.</summary>
    /// <param name="missing">Each with its resource name and what was found there.</param>
    public static string Of(IEnumerable<MissingInstrument> missing) =>
        $"Paused. {string.Join(' ', missing.Select(Of))} The work goes on by itself; leave the clip where it is.";

    /// <summary>Which instruments are back, and what begins anew.</summary>
    /// <param name="instruments">The instruments.</param>
    /// <param name="output">The output that was in hand; none between outputs.</param>
    public static string Back(IReadOnlyCollection<BenchInstrument> instruments, int? output) =>
        $"The {Names(instruments)} {(instruments.Count == 1 ? "is" : "are")} back."
        + (output is { } number ? $" Output {number} begins anew: what was read of it before the gap does not count." : "");

    /// <summary>An instrument that is missing outside a job's stages, where, and what to look at.</summary>
    /// <param name="name">Its name in the middle of a sentence.</param>
    /// <param name="resource">Its resource name.</param>
    /// <param name="fault">What was found there.</param>
    public static string Of(string name, string resource, BenchFaultException fault) =>
        $"Paused. {Of(name, resource, fault, "stop and begin anew")} The work goes on by itself; leave what is clipped where it is.";

    private static string Of(MissingInstrument missing) => Of(Name(missing.Instrument), missing.Resource, missing.Fault, "stop, then go on with the job");

    private static string Of(string name, string resource, BenchFaultException fault, string another) => $"The {name} at {resource} " + (fault.Kind switch
    {
        BenchFault.NotReachable => "is gone. Look at its cable, at both ends, and whether it is on.",
        BenchFault.NoAnswer => "does not answer. Look whether it is on and under remote control; switch it off and on.",
        _ => $"is not the one of before. Found: {fault.Found}. Expected: {fault.Expected}. Connect that one again; to go on with another, {another}.",
    });
}
