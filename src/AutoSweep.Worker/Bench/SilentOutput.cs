namespace AutoSweep.Worker.Bench;

/// <summary>An output that gave no tone while it was clipped.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Reading">What the meter read meanwhile.</param>
/// <param name="HumCounted">Whether the counter found the mains.</param>
/// <param name="HumHertz">The hum's frequency in hertz, or a multiple's, where it was counted.</param>
public sealed record SilentOutput(int Output, LevelSample Reading, bool HumCounted, double? HumHertz = null);
