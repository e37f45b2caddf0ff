namespace AutoSweep.Core.Diagnosis;

/// <summary>From what size on something is called a fault. Figures without a source are common practice of the trade.</summary>
public sealed record DiagnosisOptions
{
    /// <summary>How many standard uncertainties a capacitor's effect must exceed.</summary>
    /// <value>Default 2: the coverage factor of 95 % (GUM, table G.1).</value>
    public double CoverageFactor { get; init; } = 2;

    /// <summary>A level below this many millivolts without a tone is a dead output; more is hum.</summary>
    /// <value>Default 0.05 mV, as in the survey.</value>
    public double DeadMillivolts { get; init; } = 0.05;

    /// <summary>How much a level moves between survey and sweep by warm-up, mains and room, as a share of it.</summary>
    /// <value>Default 0.01.</value>
    public double SlowChange { get; init; } = 0.01;

    /// <summary>The dissipation from which a capacitor is called leaky.</summary>
    /// <value>Default 0.05: ten times that of a sound paper capacitor.</value>
    public double LeakyDissipation { get; init; } = 0.05;

    /// <summary>The least loss in decibels that a leak must explain.</summary>
    /// <value>Default 0.5 dB.</value>
    public double LeakyDecibels { get; init; } = 0.5;

    /// <summary>The dissipation that a sound old capacitor may have, where it was not measured; how much level it costs goes by the filter's Q.</summary>
    /// <value>Default 0.01: paper at 1 kHz (from memory).</value>
    public double SoundDissipation { get; init; } = 0.01;

    /// <summary>How much level a capacitor that was matched to its coil by hand may lose by its value, in decibels.</summary>
    /// <value>Default 0.2 dB: a fifth of a half-width.</value>
    public double MatchedDecibels { get; init; } = 0.2;

    /// <summary>How far up a capacitor drifts at the most, as a factor of what the filter wants.</summary>
    /// <value>Default 3: 0.105 µF parts were found at 0.3 µF (published repair page).</value>
    public double LargestDrift { get; init; } = 3;

    /// <summary>A measured old capacitor below this share of what the filter wants is open: what is left is leads and stray.</summary>
    /// <value>Default 0.3.</value>
    public double OpenShare { get; init; } = 0.3;

    /// <summary>The chance that a sound generator's level curve shows a weak or strong magnet at all.</summary>
    /// <value>Default 0.08, so that all rules together stay under one alarm in ten generators; divided among the outputs (Bonferroni), it gives the distance in standard deviations.</value>
    public double CurveFalseAlarm { get; init; } = 0.08;

    /// <summary>The largest swing at the wheel's own rate that is usual, as a share of the level, peak.</summary>
    /// <value>Default 0.03: a wheel wobbles by a per cent or two in amplitude.</value>
    public double UsualWheelSwing { get; init; } = 0.03;

    /// <summary>How far all tones may be off together, as a share, before the speed is a finding.</summary>
    /// <value>Default 0.002: an interconnected grid keeps within 0.1 % nearly always (from memory); 3.5 cents.</value>
    public double UsualSpeed { get; init; } = 0.002;

    /// <summary>How far a supply may be off its frequency by EN 50160, as a share.</summary>
    /// <value>Default 0.01: ±1 % for 99.5 % of a year in an interconnected supply (clause from memory).</value>
    public double MainsLimit { get; init; } = 0.01;

    /// <summary>How well the profile's curve knows the step between filtered and plain outputs, one standard deviation in decibels.</summary>
    /// <value>Default 0.5 dB.</value>
    public double CurveStepUncertainty { get; init; } = 0.5;
}
