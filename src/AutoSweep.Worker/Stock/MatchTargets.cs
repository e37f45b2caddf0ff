using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Quantities;
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
        if (swept is not { PeakPicofarads: > 0 and var peak, HalfWidthPicofarads: > 0 and var halfWidth })
            return null;
        if (SweptResult.From(state, swept).PeakAtNominalMainsPicofarads is not { } wanted)
            return null;
        // The whole response moves with the mains, its width too.
        var scale = (double)wanted / peak;
        return new()
        {
            Output = swept.Output,
            Wanted = new Capacitance(wanted),
            HalfWidthPicofarads = halfWidth * scale,
            SdPicofarads = swept.PeakSdPicofarads is { } sd && double.IsFinite(sd) ? sd * scale : 0,
            RequiredVolts = requiredVolts,
            Law = swept.Law,
        };
    }
}
