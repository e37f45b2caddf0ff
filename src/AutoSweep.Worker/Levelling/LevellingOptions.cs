using AutoSweep.Core.Magnets;

namespace AutoSweep.Worker.Levelling;

/// <summary>How the outputs are levelled at their magnets. Figures without a source are bench practice.</summary>
public sealed record LevellingOptions
{
    /// <summary>How rods are guided.</summary>
    public MagnetGuidanceOptions Guidance { get; init; } = new();

    /// <summary>How the hazard was acknowledged in this session; none where it was not: then no magnet is touched.</summary>
    public string? Acknowledged { get; init; }

    /// <summary>The gap that every rod has at least, as found, in millimetres: a leaf that went in everywhere.</summary>
    public double LeastGapMillimetres { get; init; } = MagnetRod.UnmeasuredGapMillimetres;

    /// <summary>The gap of single rods in millimetres, by output: the thickest leaf that went in.</summary>
    public IReadOnlyDictionary<int, double> Gaps { get; init; } = new Dictionary<int, double>();

    /// <summary>Whether this job has no recap: then the levels as found are levelled.</summary>
    public bool WithoutRecap { get; init; }

    /// <summary>Samples of a reading that counts.</summary>
    /// <value>Default 8.</value>
    public int Samples { get; init; } = 8;

    /// <summary>Over how long they are spread.</summary>
    /// <value>Default 1 s: sixteen turns of the slowest wheel.</value>
    public TimeSpan Span { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long a level must stand still after it has moved before the rod counts as locked.</summary>
    /// <value>Default 8 s: longer than a hand rests between pulling, pushing and locking.</value>
    public TimeSpan Rest { get; init; } = TimeSpan.FromSeconds(8);

    /// <summary>How long after an order a level that has not moved at all is read as it is.</summary>
    /// <value>Default 90 s.</value>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(90);

    /// <summary>The least change of level that is taken for a move, in decibels.</summary>
    public double LeastChangeDecibels { get; init; } = 0.05;

    /// <summary>A level that falls by this many decibels at once has lost its clip.</summary>
    /// <value>Default 20 dB: twice what a rod is ever moved by.</value>
    public double ClipGoneDecibels { get; init; } = 20;

    /// <summary>What is known of an output's rod.</summary>
    public MagnetRod RodOf(int output, int wheelTeeth) => new(wheelTeeth, Gaps.TryGetValue(output, out var gap) ? gap : LeastGapMillimetres);
}
