namespace AutoSweep.Core.Journal;

/// <summary>A stage began, or went on after a stop.</summary>
/// <param name="Stage">Which.</param>
/// <param name="Planned">The outputs that it is to cover, in ascending number.</param>
public sealed record StageStarted(JobStage Stage, IReadOnlyList<int> Planned) : JournalEvent;
