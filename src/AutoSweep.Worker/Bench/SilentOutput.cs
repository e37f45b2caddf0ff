namespace AutoSweep.Worker.Bench;

/// <summary>An output that gave no tone while it was clipped.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Reading">What the meter read meanwhile.</param>
/// <param name="HumCounted">Whether the counter found the mains.</param>
public sealed record SilentOutput(int Output, LevelSample Reading, bool HumCounted);
