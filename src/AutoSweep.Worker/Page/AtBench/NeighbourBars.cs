using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The level of an output against its neighbours: those of its own group, which share a kind of coil and filter.</summary>
public static class NeighbourBars
{
    /// <summary>How many are shown to either side; more cannot be told apart from a metre away.</summary>
    public const int EitherSide = 5;

    /// <summary>The bars in the generator's order; empty where no output is looked at or its group is not read yet.</summary>
    /// <param name="state">The job.</param>
    /// <param name="stage">The stage whose levels are shown.</param>
    /// <param name="here">The output at the clips, or the one done last; none shows nothing.</param>
    /// <param name="live">Its level now, where it is being read.</param>
    public static IReadOnlyList<NeighbourBar> Of(JobState state, JobStage stage, int? here, double? live)
    {
        var number = here ?? (state.ClippingOrder.IsEmpty ? null : state.ClippingOrder[^1]);
        if (state.Profile!.Outputs.FirstOrDefault(output => output.Number == number) is not { } clipped)
            return [];
        var group = state.Profile.Outputs.Where(output => output.Group == clipped.Group).Select(output => output.Number).ToList();
        var place = group.IndexOf(clipped.Number);
        var shown = group.Skip(Math.Max(0, place - EitherSide)).Take(Math.Min(place, EitherSide) + EitherSide + 1)
            .Select(output => (Output: output, Level: output == here && live is not null ? live : Known(state, stage, output))).ToList();
        var top = shown.Max(one => one.Level) ?? 0;
        return top > 0
            ? [.. shown.Select(one =>
                new NeighbourBar(one.Output, one.Level, (one.Level ?? 0) / top, one.Output == here, IsOdd(state, stage, one.Output)))]
            : [];
    }

    private static double? Known(JobState state, JobStage stage, int output) => stage switch
    {
        JobStage.Sweep => state.Swept.GetValueOrDefault(output)?.PeakMillivolts,
        JobStage.Check => state.Checked.GetValueOrDefault(output)?.Millivolts,
        JobStage.Level => state.Levelled.GetValueOrDefault(output)?.AfterMillivolts ?? state.Checked.GetValueOrDefault(output)?.Millivolts
            ?? state.Surveyed.GetValueOrDefault(output)?.Millivolts,
        _ => state.SurveyOf(stage).GetValueOrDefault(output)?.Millivolts,
    };

    private static bool IsOdd(JobState state, JobStage stage, int output) =>
        OutputStands.Of(state, new() { Activity = BenchActivity.Waiting }, stage, output) == OutputStand.Look;
}
