namespace AutoSweep.Core.Journal;

/// <summary>Work on an output was broken off and its readings do not count: the clip came off, another tone came.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Output">The output's number.</param>
/// <param name="Why">The reason in words.</param>
public sealed record OutputAbandoned(JobStage Stage, int Output, string Why) : JournalEvent;
