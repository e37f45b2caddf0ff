namespace AutoSweep.Core.Journal;

/// <summary>A stage has covered every planned output.</summary>
/// <param name="Stage">Which.</param>
public sealed record StageEnded(JobStage Stage) : JournalEvent;
