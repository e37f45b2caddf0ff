using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Diagnosis;

/// <summary>What is wrong with the generator on the bench, folded from the job's readings. Nothing is measured for it.</summary>
public static class Diagnose
{
    private static readonly IFaultRule[] Rules =
    [
        new SpeedRule(), new LoadingRule(), new SilenceRule(), new WiringRule(), new CapacitorRule(), new MagnetRule(), new WheelRule(),
    ];

    /// <summary>The findings of a job: the generator's first, then output by output.</summary>
    /// <param name="state">The job; without a survey there is nothing to find.</param>
    /// <param name="oldCapacitors">What the capacitors that came off measured, by output, from the stock's ledger; none where nobody logged
    /// them. Without them a drifted capacitor and a leaky one can hardly be told apart.</param>
    /// <param name="options">From what size on something is a fault; the defaults when not given.</param>
    public static IReadOnlyList<Finding> Of(
        JobState state, IReadOnlyDictionary<int, OldCapacitorRemoved>? oldCapacitors = null, DiagnosisOptions? options = null)
    {
        if (state.Profile is null)
            return [];
        var job = new DiagnosisCase(state, oldCapacitors ?? new Dictionary<int, OldCapacitorRemoved>(), options ?? new());
        return [.. Rules.SelectMany(rule => rule.Find(job)).OrderBy(finding => finding.Output ?? 0).ThenBy(finding => finding.Fault)];
    }
}
