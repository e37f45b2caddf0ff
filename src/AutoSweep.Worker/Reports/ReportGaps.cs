using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>What was not done or not cleared up: a record that is silent about it would claim too much.</summary>
public static class ReportGaps
{
    /// <summary>A sentence for each gap; none where the job is whole.</summary>
    public static IReadOnlyList<string> Of(JobState state, StockState? stock) =>
        [.. Stages(state), .. Sweeps(state), .. Parts(state), .. Checks(state), .. Magnets(state), .. OldOnes(state, stock)];

    private static IEnumerable<string> Stages(JobState state)
    {
        foreach (var stage in Enum.GetValues<JobStage>())
        {
            var missing = state.Missing(stage).ToList();
            if (!state.Planned.ContainsKey(stage))
                yield return $"{StageWords.Of(stage)}: not begun.";
            else if (missing.Count > 0)
                yield return $"{StageWords.Of(stage)}: nothing recorded for {Outputs(missing)}.";
        }
    }

    private static IEnumerable<string> Sweeps(JobState state)
    {
        List<int> unsure = [.. state.Swept.Values.Where(one => one.Reason != PeakStopReason.BoundReached).Select(one => one.Output)];
        if (unsure.Count > 0)
            yield return $"The sweep ended without a certain peak at {Outputs(unsure)}.";
    }

    private static IEnumerable<string> Parts(JobState state)
    {
        List<int> open = [.. state.Swept.Keys.Where(output => !state.Fitted.ContainsKey(output))];
        if (open.Count > 0)
            yield return $"No new capacitor fitted at {Outputs(open)}.";
        List<int> unread = [.. state.Fitted.Keys.Where(output => !state.Checked.ContainsKey(output))];
        if (unread.Count > 0 && state.Planned.ContainsKey(JobStage.Check))
            yield return $"Not read again with new capacitors: {Outputs(unread)}.";
    }

    private static IEnumerable<string> Checks(JobState state)
    {
        List<int> odd = [.. state.Checked.Values.Where(one => !one.IsExplained).Select(one => one.Output)];
        if (odd.Count > 0)
            yield return $"A difference between predicted and measured level that noise does not explain stays open at {Outputs(odd)}.";
    }

    private static IEnumerable<string> Magnets(JobState state)
    {
        List<int> off = [.. state.Levelled.Values.Where(one => one.Ending != GuidanceEnding.InBand).Select(one => one.Output)];
        if (off.Count > 0)
            yield return $"Levelling at the magnet ended outside the target's band at {Outputs(off)}.";
    }

    private static IEnumerable<string> OldOnes(JobState state, StockState? stock)
    {
        List<int> silent = [.. state.Fitted.Keys.Where(output => stock?.OldCapacitors.ContainsKey(new(StockJob.NameOf(state), output)) != true)];
        if (silent.Count > 0)
            yield return $"The old capacitor is not logged for {Outputs(silent)}.";
    }

    private static string Outputs(List<int> outputs) => (outputs.Count == 1 ? "output " : "outputs ") + OutputRanges.Text(outputs);
}
