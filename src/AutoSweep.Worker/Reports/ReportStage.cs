using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>A stage of the job.</summary>
/// <param name="Stage">Which.</param>
/// <param name="Began">When it first began.</param>
/// <param name="Last">When it ended, or was last worked on.</param>
/// <param name="Planned">How many outputs it was to cover.</param>
/// <param name="Missing">The planned outputs without a result.</param>
public sealed record ReportStage(JobStage Stage, DateTimeOffset Began, DateTimeOffset Last, int Planned, IReadOnlyList<int> Missing)
{
    /// <summary>The stages that have begun, in their order.</summary>
    public static IReadOnlyList<ReportStage> Of(JobState state, IReadOnlyList<JournalEntry> entries) =>
        [.. Enum.GetValues<JobStage>().Where(state.Planned.ContainsKey).Select(stage => Of(stage, state, entries))];

    private static ReportStage Of(JobStage stage, JobState state, IReadOnlyList<JournalEntry> entries)
    {
        var began = entries.First(entry => entry.Event is StageStarted started && started.Stage == stage).At;
        var last = entries.Where(entry => Touches(entry.Event, stage)).Max(entry => entry.At);
        return new(stage, began, last, state.Planned[stage].Count, [.. state.Missing(stage)]);
    }

    private static bool Touches(JournalEvent what, JobStage stage) => what switch
    {
        StageStarted started => started.Stage == stage,
        StageEnded ended => ended.Stage == stage,
        LevelRead read => read.Stage == stage,
        _ => false,
    };
}
