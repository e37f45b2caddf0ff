namespace AutoSweep.Core.Magnets;

/// <summary>A steady level of an output, read with the rod locked and averaged over whole turns of the wheel.</summary>
/// <param name="Decibels">How far the level lies above its target in decibels.</param>
/// <param name="SdDecibels">One standard deviation of that by noise and wobble, in decibels; above 0.</param>
/// <param name="After">The move since the reading before; none for the first reading, and for one that was only repeated.</param>
public sealed record MagnetReading(double Decibels, double SdDecibels, MagnetMove? After = null);
