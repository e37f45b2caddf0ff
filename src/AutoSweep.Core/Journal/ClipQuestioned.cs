namespace AutoSweep.Core.Journal;

/// <summary>The bench was told that something is odd about the clip.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Question">What is odd.</param>
/// <param name="Output">The output that it is about, where that is known.</param>
/// <param name="ToneHertz">The tone counted in hertz, where there is one.</param>
public sealed record ClipQuestioned(JobStage Stage, ClipQuestion Question, int? Output, double? ToneHertz) : JournalEvent;
