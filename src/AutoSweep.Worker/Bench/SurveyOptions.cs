namespace AutoSweep.Worker.Bench;

/// <summary>How outputs are surveyed.</summary>
public sealed record SurveyOptions
{
    /// <summary>Samples that move by more than this share of their mean (one standard deviation) make an output unsteady.</summary>
    /// <value>Default 0.025: a wheel wobbles by a per cent or two in amplitude, less than that in standard deviation, and the detector
    /// evens most of it out.</value>
    public double UnsteadyShare { get; init; } = 0.025;

    /// <summary>A swing at the wheel's own rate above this share of the level (peak) makes an output unsteady, too.</summary>
    /// <value>Default 0.03: a wheel wobbles by a per cent or two in amplitude (common practice, no source).</value>
    public double UnsteadySwing { get; init; } = 0.03;

    /// <summary>A swing counts only above this many standard deviations of either of its quadratures.</summary>
    /// <value>Default 4: chance in a few thousand outputs (Rayleigh distribution, exp(-8)).</value>
    public double SwingOverUncertainty { get; init; } = 4;

    /// <summary>Samples taken of each output.</summary>
    /// <value>Default 7.</value>
    public int Samples { get; init; } = 7;

    /// <summary>Over how long they are spread.</summary>
    /// <value>Default 1.5 s: an unsteady output comes and goes more slowly than a wheel turns.</value>
    public TimeSpan Span { get; init; } = TimeSpan.FromSeconds(1.5);

    /// <summary>An output without a tone that gives less than this many millivolts is dead; one that gives more hums, or its tone is too
    /// weak to count.</summary>
    /// <value>Default 0.05 mV: a sixtieth of the lowest usual level, above the noise of a meter's lowest range (common practice, no
    /// source).</value>
    public double DeadMillivolts { get; init; } = 0.05;
}
