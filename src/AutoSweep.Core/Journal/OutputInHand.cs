using System.Collections.Immutable;

namespace AutoSweep.Core.Journal;

/// <summary>The output at the clips, recognised and not complete.</summary>
/// <param name="Stage">The stage that works on it.</param>
/// <param name="Output">Its number.</param>
/// <param name="ToneHertz">Its tone in hertz, where it was counted.</param>
/// <param name="Readings">The readings so far.</param>
public sealed record OutputInHand(JobStage Stage, int Output, double? ToneHertz, ImmutableList<LevelRead> Readings);
