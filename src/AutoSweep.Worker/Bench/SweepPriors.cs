using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.Bench;

/// <summary>What is believed of an output's peak, from the profile and from the outputs of its group that are done.</summary>
public static class SweepPriors
{
    /// <summary>The result of a search that never heard anything.</summary>
    public static PeakResult Nothing { get; } = new() { Reason = PeakStopReason.LevelLost, Peak = null, Trace = [] };

    // A profile's word on the law is worth about four to one: it holds for the kind of generator, not for this one's last repair.
    private const double WordOfProfile = 1.5;

    /// <summary>The prior for an output.</summary>
    /// <param name="output">A filtered output.</param>
    /// <param name="state">The job, for what is done.</param>
    public static PeakPrior For(GeneratorOutput output, JobState state)
    {
        var knowledge = GroupKnowledge.None;
        foreach (var done in state.Profile!.FilteredOutputs.Where(other => other.Group == output.Group && other.Number != output.Number))
        {
            if (state.Swept.TryGetValue(done.Number, out var swept) && Result(swept) is { } result)
                knowledge = knowledge.Learn(result, done.Capacitor!.Expected);
        }

        return knowledge.PriorFor(ByProfile(output.Capacitor!));
    }

    private static PeakPrior ByProfile(FilterCapacitor capacitor)
    {
        var open = new PeakPrior { Expected = capacitor.Expected };
        return capacitor.Law switch
        {
            ResponseLaw.Series => open with { LogOddsSeriesOverShunt = WordOfProfile },
            ResponseLaw.Shunt => open with { LogOddsSeriesOverShunt = -WordOfProfile },
            ResponseLaw.General => open with { LogOddsGeneral = WordOfProfile },
            _ => open,
        };
    }

    private static PeakResult? Result(OutputSwept swept) => swept.PeakPicofarads is { } peak ? new()
    {
        Reason = swept.Reason,
        Peak = new(peak),
        PeakSdPicofarads = swept.PeakSdPicofarads ?? double.NaN,
        HalfWidthPicofarads = swept.HalfWidthPicofarads ?? double.NaN,
        Q = swept.Q ?? double.NaN,
        Law = swept.Law,
        LogOddsSeriesOverShunt = swept.LogOddsSeriesOverShunt,
        LogOddsGeneral = swept.LogOddsGeneral,
        LossBoundDecibels = swept.LossBoundDecibels ?? double.PositiveInfinity,
        Trace = [],
    } : null;
}
