namespace AutoSweep.Core.Magnets;

/// <summary>How a rod stands when the work on it is over.</summary>
/// <param name="Ending">Why it is over.</param>
/// <param name="Moves">How many moves were made.</param>
/// <param name="Decibels">How far the level lies above its target now, in decibels; none without a reading.</param>
/// <param name="BestDecibels">The nearest to the target that it was after any move, or as found.</param>
/// <param name="Slope">What is known of the rod's decibels a millimetre.</param>
/// <param name="Trace">Every reading, in order.</param>
public sealed record GuidanceResult(
    GuidanceEnding Ending, int Moves, double? Decibels, double? BestDecibels, SlopeBelief Slope, IReadOnlyList<MagnetReading> Trace);
