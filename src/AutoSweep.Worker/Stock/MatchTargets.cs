using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Stock;

/// <summary>The targets of a job: what its swept outputs want at nominal mains frequency.</summary>
public static class MatchTargets
{
    /// <summary>The outputs that a sweep gave a peak and a half-width.</summary>
    /// <param name="state">The job.</param>
    /// <param name="requiredVolts">The rated voltage that parts must have, in volts.</param>
    public static IReadOnlyList<MatchTarget> Of(JobState state, double requiredVolts) =>
        [.. state.Swept.Values.Select(swept => Of(state, swept, requiredVolts)).OfType<MatchTarget>()];

    /// <summary>What an output wants; none where its sweep found no peak.</summary>
    public static MatchTarget? Of(JobState state, OutputSwept swept, double requiredVolts)
    {
        if (swept is not { HalfWidthPicofarads: > 0 and var halfWidth } || SweptResult.PeakOf(state, swept) is not { } peak)
            return null;
        return new()
        {
            Output = swept.Output,
            Wanted = peak.Capacitance,
            // The whole response moves with the mains, its width too.
            HalfWidthPicofarads = halfWidth * peak.Scale,
            SdPicofarads = peak.SdPicofarads ?? peak.MainsSdPicofarads,
            RequiredVolts = requiredVolts,
            Law = swept.Law,
        };
    }
}
