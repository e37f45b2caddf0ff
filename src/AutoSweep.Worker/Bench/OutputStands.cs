using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.Bench;

/// <summary>Tells how outputs stand.</summary>
public static class OutputStands
{
    /// <summary>The stand of one output.</summary>
    /// <param name="state">The job.</param>
    /// <param name="status">What goes on.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="output">The output's number.</param>
    public static OutputStand Of(JobState state, BenchStatus status, JobStage stage, int output)
    {
        if (status.Output == output && status.Activity is (BenchActivity.Reading or BenchActivity.Moving))
            return OutputStand.AtClips;
        if (!state.Planned.GetValueOrDefault(stage, []).Contains(output))
            return OutputStand.NotInStage;
        if (!state.IsDone(stage, output))
            return OutputStand.Open;
        return IsGood(state, stage, output) ? OutputStand.Done : OutputStand.Look;
    }

    private static bool IsGood(JobState state, JobStage stage, int output) => stage switch
    {
        JobStage.Survey or JobStage.AsLeft => state.SurveyOf(stage)[output].Flags.Count == 0,
        JobStage.Sweep => state.Swept[output].Reason == PeakStopReason.BoundReached,
        JobStage.Level => state.Levelled[output].Ending == GuidanceEnding.InBand,
        _ => state.Checked[output].IsExplained,
    };
}
