namespace AutoSweep.Core.Journal;

/// <summary>Somebody has read a hazard and wants to go on: once a session, before the work that it belongs to.</summary>
/// <param name="Stage">The work.</param>
/// <param name="Hazard">What was shown.</param>
/// <param name="How">How it was acknowledged: typed, by a flag, or by a rehearsal on a simulated bench.</param>
public sealed record HazardAcknowledged(JobStage Stage, string Hazard, string How) : JournalEvent;
