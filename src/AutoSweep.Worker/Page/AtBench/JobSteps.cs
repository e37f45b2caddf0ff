using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>What of a job is done, and what is next.</summary>
public static class JobSteps
{
    /// <summary>The steps of a job in their order; a generator without filters has none that are about capacitors.</summary>
    /// <param name="state">The job.</param>
    /// <param name="olds">How many of the capacitors that came off are written down in the stock's ledger.</param>
    public static IReadOnlyList<JobStep> Of(JobState state, int olds = 0)
    {
        var hasFilters = state.Profile!.FilteredOutputs.Any();
        return
        [
            AtGenerator(JobStepKind.Survey, JobStage.Survey, state, state.Profile.Outputs.Count, isReady: true),
            .. hasFilters ? Capacitors(state, olds) : [],
            Levels(state),
            AtGenerator(JobStepKind.AsLeft, JobStage.AsLeft, state, state.Profile.Outputs.Count, isReady: !state.Surveyed.IsEmpty),
            new(JobStepKind.Record, state.Surveyed.IsEmpty ? StepStand.NotYet : StepStand.Open, 0, 0),
        ];
    }

    /// <summary>The step to offer first: the latest that was broken off, else the first that is open. There is always one.</summary>
    /// <remarks>Never the old set: nothing waits for it, and who throws it away unread must not be asked for it again and again.</remarks>
    public static JobStep Next(IReadOnlyList<JobStep> steps)
    {
        var wanted = steps.Where(step => step.Kind != JobStepKind.OldSet).ToList();
        return wanted.LastOrDefault(step => step.Stand == StepStand.BrokenOff) ?? wanted.First(step => step.Stand == StepStand.Open);
    }

    private static IEnumerable<JobStep> Capacitors(JobState state, int olds)
    {
        var peaks = state.Swept.Values.Count(swept => swept.PeakPicofarads is not null);
        var matched = state.Matched?.Outputs.Where(output => output.Parts.Count > 0).Select(output => output.Output).ToList() ?? [];
        var fitted = matched.Count(state.Fitted.ContainsKey);
        yield return AtGenerator(JobStepKind.Sweep, JobStage.Sweep, state, state.Profile!.FilteredOutputs.Count(), isReady: true);
        var filters = state.Profile.FilteredOutputs.Count();
        yield return new(JobStepKind.OldSet, Stand(isReady: !state.Swept.IsEmpty, olds > 0, olds >= filters), olds, filters);
        yield return new(JobStepKind.Match, Stand(isReady: peaks > 0, isBegun: false, isDone: state.Matched is not null), matched.Count, peaks);
        yield return new(JobStepKind.Fit, Stand(matched.Count > 0, fitted > 0, matched.Count > 0 && fitted == matched.Count), fitted, matched.Count);
        yield return Check(state);
    }

    // What was fitted since the check is not checked yet, whatever the journal says of the stage.
    private static JobStep Check(JobState state)
    {
        var wanted = state.Fitted.Keys.Where(output => LevelPrediction.Of(state, output) is not null).ToList();
        var seen = wanted.Count(state.Checked.ContainsKey);
        var stand = Stand(wanted.Count > 0, seen > 0 || IsBrokenOff(state, JobStage.Check), wanted.Count > 0 && seen == wanted.Count);
        return new(JobStepKind.Check, stand, seen, wanted.Count);
    }

    private static JobStep Levels(JobState state)
    {
        var hasTarget = (state.ChosenTarget ?? TargetCurve.Of(state.Profile!)).Points.Count > 0;
        var planned = state.Planned.GetValueOrDefault(JobStage.Level, []);
        var stand = Stand(hasTarget && !state.Surveyed.IsEmpty, IsBrokenOff(state, JobStage.Level), state.Ended.Contains(JobStage.Level));
        return new(JobStepKind.Levels, stand, planned.Count(output => state.IsDone(JobStage.Level, output)), planned.Count);
    }

    private static JobStep AtGenerator(JobStepKind kind, JobStage stage, JobState state, int outputs, bool isReady)
    {
        var planned = state.Planned.GetValueOrDefault(stage, []);
        var isDone = state.Ended.Contains(stage) && !state.Missing(stage).Any();
        return new(kind, Stand(isReady, planned.Count > 0, isDone), planned.Count(output => state.IsDone(stage, output)), outputs);
    }

    private static bool IsBrokenOff(JobState state, JobStage stage) => state.Planned.ContainsKey(stage) && !state.Ended.Contains(stage);

    private static StepStand Stand(bool isReady, bool isBegun, bool isDone) =>
        isDone ? StepStand.Done : isBegun ? StepStand.BrokenOff : isReady ? StepStand.Open : StepStand.NotYet;
}
