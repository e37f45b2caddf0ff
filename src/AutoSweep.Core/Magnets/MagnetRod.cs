namespace AutoSweep.Core.Magnets;

/// <summary>What is known of an output's magnet rod before it is touched.</summary>
/// <param name="WheelTeeth">Teeth of the wheel that it stands before.</param>
/// <param name="LeastGapMillimetres">
/// The gap, as found, that the rod has at least: the thickest feeler gauge leaf that went between tip and wheel, or the default. It is the only
/// thing that tells where the wheel is: levels tell how far a rod has moved, never how far it may.
/// </param>
public sealed record MagnetRod(int WheelTeeth, double LeastGapMillimetres)
{
    /// <summary>The gap taken for granted where nobody has put a leaf in: 0.1 mm, a sheet of paper, with which hardly any rod goes in
    /// (no source: a rod that stands nearer than that should be backed off first).</summary>
    public const double UnmeasuredGapMillimetres = 0.1;
}
