namespace AutoSweep.Core.Magnets;

/// <summary>How rods are guided. Figures without a source are bench practice: no page was found that measures hands at a magnet rod.</summary>
public sealed record MagnetGuidanceOptions
{
    /// <summary>How far the level may be off its target to either side, in decibels.</summary>
    /// <value>Default 0.25 dB: a band half a decibel wide.</value>
    public double HalfBandDecibels { get; init; } = 0.25;

    /// <summary>The most moves that one rod is worth.</summary>
    /// <value>Default 8.</value>
    public int Budget { get; init; } = 8;

    /// <summary>One standard deviation of the distance that a hand moves a rod, as a share of the distance asked for.</summary>
    /// <value>Default 0.2.</value>
    public double HandShare { get; init; } = 0.2;

    /// <summary>One standard deviation of how far locking the set screw shifts the rod, in millimetres.</summary>
    /// <value>Default 0.003 mm.</value>
    public double LockingMillimetres { get; init; } = 0.003;

    /// <summary>The smallest move that a hand can make: the lightest tap.</summary>
    /// <value>Default 0.005 mm.</value>
    public double SmallestMillimetres { get; init; } = 0.005;

    /// <summary>How much further out a rod goes before it comes back, so that the play is taken up.</summary>
    /// <value>Default 0.02 mm: above the play that a rod in a reamed hole is likely to have.</value>
    public double OvershootMillimetres { get; init; } = 0.02;

    /// <summary>The gap that must be left for sure: the wheel's run-out, and what the bounds have not thought of.</summary>
    /// <value>Default 0.05 mm.</value>
    public double ReserveMillimetres { get; init; } = 0.05;

    /// <summary>The most of the gap still known to be there that one move in may use up, whatever the hand does.</summary>
    /// <value>Default 0.5.</value>
    public double InwardShare { get; init; } = 0.5;

    /// <summary>How many standard deviations of hand and lock a move in must survive without touching.</summary>
    /// <value>Default 3.</value>
    public double HandSigmas { get; init; } = 3;

    /// <summary>By how many decibels the first move changes the level, if the slope is what its wheel makes likely: out, of a rod that is to go in.</summary>
    /// <value>Default 1 dB: ten times what noise and locking do to it.</value>
    public double ProbeDecibels { get; init; } = 1;

    /// <summary>The most that a move may be longer than the one before it.</summary>
    /// <value>Default 4.</value>
    public double LargestGrowth { get; init; } = 4;

    /// <summary>How often a level that does not stand still is read again.</summary>
    /// <value>Default 2.</value>
    public int Repeats { get; init; } = 2;
}
