using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>An output at the clips.</summary>
/// <param name="Output">Its number.</param>
/// <param name="ToneHertz">Its tone in hertz, where it was counted.</param>
/// <param name="By">What told.</param>
public sealed record ClippedOutput(int Output, double? ToneHertz, RecognisedBy By);
