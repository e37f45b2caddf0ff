using AutoSweep.Core.Curve;

namespace AutoSweep.Core.Journal;

/// <summary>A target curve was chosen for the job. It is kept whole, so that the record needs no other file.</summary>
/// <param name="Target">The curve.</param>
public sealed record TargetChosen(TargetCurve Target) : JournalEvent;
