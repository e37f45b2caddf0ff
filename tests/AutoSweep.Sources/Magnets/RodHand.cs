namespace AutoSweep.Sources.Magnets;

/// <summary>The hand at a simulated rod, and the meter that is read meanwhile. Invented figures: no page was found that measures hands.</summary>
public sealed record RodHand
{
    /// <summary>One standard deviation of a distance, as a share of it.</summary>
    public double Share { get; init; } = 0.2;

    /// <summary>The smallest move that it can make, in millimetres.</summary>
    public double SmallestMillimetres { get; init; } = 0.005;

    /// <summary>One standard deviation of the shift by locking, in millimetres.</summary>
    public double LockingSd { get; init; } = 0.002;

    /// <summary>Samples of a reading.</summary>
    public int Samples { get; init; } = 8;

    /// <summary>What the meter's detector leaves of the wobble in a sample: its fast filter (10 ms) at 16 turns a second.</summary>
    public double WobbleLeft { get; init; } = 0.7;

    /// <summary>One standard deviation of a sample's own noise, as a share.</summary>
    public double MeterNoise { get; init; } = 0.0025;
}
