using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>results.json: everything that the journal folds to, for other programs.</summary>
/// <param name="Generator">The generator's name.</param>
/// <param name="Invented">Whether it exists only in examples.</param>
/// <param name="Bench">The bench that took the latest readings.</param>
/// <param name="Survey">The surveyed outputs.</param>
/// <param name="Sweeps">The swept outputs.</param>
/// <param name="Fitted">What was fitted at each output.</param>
/// <param name="Checked">The levels with the fitted parts against what the sweeps predicted.</param>
/// <param name="Levelled">How the work at each output's magnet ended.</param>
/// <param name="AsLeft">The outputs of the last survey.</param>
/// <param name="Findings">What is wrong, as far as these readings tell.</param>
/// <param name="Missing">Outputs planned and not done, by stage.</param>
public sealed record JobResults(
    string Generator,
    bool Invented,
    BenchConnected? Bench,
    IReadOnlyList<OutputSurveyed> Survey,
    IReadOnlyList<SweptResult> Sweeps,
    IReadOnlyList<OutputFitted> Fitted,
    IReadOnlyList<OutputChecked> Checked,
    IReadOnlyList<OutputLevelled> Levelled,
    IReadOnlyList<OutputSurveyed> AsLeft,
    IReadOnlyList<Finding> Findings,
    IReadOnlyDictionary<JobStage, IReadOnlyList<int>> Missing)
{
    /// <summary>The results of a job.</summary>
    public static JobResults From(JobState state) => new(
        state.Profile!.Name,
        state.Profile.Invented,
        state.Bench,
        [.. state.Surveyed.Values],
        [.. state.Swept.Values.Select(swept => SweptResult.From(state, swept))],
        [.. state.Fitted.Values],
        [.. state.Checked.Values],
        [.. state.Levelled.Values],
        [.. state.AsLeft.Values],
        Diagnose.Of(state),
        state.Planned.Keys.ToDictionary(stage => stage, stage => (IReadOnlyList<int>)[.. state.Missing(stage)]));
}
