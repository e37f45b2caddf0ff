using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>What the clips turned out to hold.</summary>
/// <param name="Clipped">The output now clipped; none when the plan ends in silent outputs.</param>
/// <param name="Silent">Outputs that were clipped before it and gave no tone, as the order of clipping tells.</param>
public sealed record ClipVerdict(ClippedOutput? Clipped, IReadOnlyList<SilentOutput> Silent);

/// <summary>An output at the clips.</summary>
/// <param name="Output">Its number.</param>
/// <param name="ToneHertz">Its tone in hertz, where it was counted.</param>
/// <param name="By">What told.</param>
public sealed record ClippedOutput(int Output, double? ToneHertz, RecognisedBy By);

/// <summary>An output that gave no tone while it was clipped.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Reading">What the meter read meanwhile.</param>
/// <param name="HumCounted">Whether the counter found the mains.</param>
public sealed record SilentOutput(int Output, LevelSample Reading, bool HumCounted);
