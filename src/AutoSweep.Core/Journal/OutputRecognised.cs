namespace AutoSweep.Core.Journal;

/// <summary>An output was recognised at the clips.</summary>
/// <param name="Stage">The stage in which it was clipped.</param>
/// <param name="Output">Its number.</param>
/// <param name="ToneHertz">The tone counted in hertz; none where it could not be.</param>
/// <param name="By">What told.</param>
public sealed record OutputRecognised(JobStage Stage, int Output, double? ToneHertz, RecognisedBy By) : JournalEvent;
