using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>The order of work at the magnets beside what was done of it.</summary>
/// <param name="ToDo">The outputs to go to, in order.</param>
/// <param name="Done">Those whose work has ended, with how it ended; the stage does not go to them again.</param>
/// <param name="LeftOut">Those that are outside their tolerance too, and why they are not touched.</param>
public sealed record MagnetTasks(
    IReadOnlyList<MagnetWork> ToDo, IReadOnlyList<(int Output, string Words)> Done, IReadOnlyList<MagnetLeftOut> LeftOut)
{
    /// <summary>The big line over them.</summary>
    public string Headline => (ToDo.Count, Done.Count) switch
    {
        (0, 0) => "No magnet needs to be touched",
        (0, _) => "No magnet is left to go to",
        (1, 0) => "1 magnet to go to",
        (1, _) => "1 more magnet to go to",
        (var many, 0) => FormattableString.Invariant($"{many} magnets to go to"),
        var (many, _) => FormattableString.Invariant($"{many} more magnets to go to"),
    };

    /// <summary>Parts an order of work.</summary>
    public static MagnetTasks Of(MagnetWorkOrder order, JobState state)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(state);
        return new(
            [.. order.Works.Where(work => !state.Levelled.ContainsKey(work.Output))],
            [.. state.Levelled.Values.Select(one => (one.Output, Words(one)))],
            [.. order.LeftOut.Where(left => !state.Levelled.ContainsKey(left.Output))]);
    }

    private static string Words(OutputLevelled done) => (done.Ending == GuidanceEnding.InBand ? "in its band, " : "outside its band, ")
        + ReportMagnet.Of(done, new JournalPlaces([])).Words;
}
