namespace AutoSweep.Worker.Bench;

/// <summary>How a settled level is taken.</summary>
public sealed record LevelReaderOptions
{
    /// <summary>Samples averaged into a reading.</summary>
    /// <value>Default 3: the fewest whose spread and trend can both be told.</value>
    public int Samples { get; init; } = 3;

    /// <summary>Over how long the samples of a reading are spread.</summary>
    /// <value>Default 0.5 s: eight turns of the slowest wheel, whose wobble they average (16.3 turns a second, computed from published
    /// gears).</value>
    public TimeSpan Span { get; init; } = TimeSpan.FromSeconds(0.5);

    /// <summary>How often a reading that still moves is waited for and taken anew.</summary>
    /// <value>Default 3.</value>
    public int Retakes { get; init; } = 3;

    /// <summary>A trend over the samples above this many standard deviations of its own means "not settled".</summary>
    /// <value>Default 4: once in 16,000 readings of a settled tone (normal distribution).</value>
    public double TrendSigmas { get; init; } = 4;

    /// <summary>The smallest relative noise believed of a single sample.</summary>
    /// <value>Default 0.001: the wheel's wobble and the last digit are never quieter (common practice, no source).</value>
    public double NoiseFloor { get; init; } = 0.001;

    /// <summary>Noise of a single sample that does not scale with the level, as a share of the meter's range.</summary>
    /// <value>Default 0.00002: two counts of a 5½-digit meter (from memory).</value>
    public double NoiseShareOfRange { get; init; } = 0.00002;
}
