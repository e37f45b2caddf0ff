namespace AutoSweep.Core.Calibration;

/// <summary>What is known of a fixture and a meter before a calibration.</summary>
public sealed record CalibrationSolverOptions
{
    private static readonly double[] Decades = [100, 1000, 10_000, 100_000];
    private static readonly double[] Weights = [1, 2, 2, 4];

    /// <summary>The relays' values by their place in the decades, in picofarads; null where they are not known.</summary>
    /// <value>Default null; <see cref="UsualBox"/> for the usual box.</value>
    public IReadOnlyList<double>? NominalPicofarads { get; init; }

    /// <summary>The largest stray that a sound fixture can have, in picofarads.</summary>
    /// <value>Default 600: leads, clips and open contacts make tens to a few hundred (docs/fixture-protocol.md, common practice).</value>
    public double LargestStrayPicofarads { get; init; } = 600;

    /// <summary>The loss tangent from which a relay's capacitor counts as leaking.</summary>
    /// <value>Default 0.005: ten times that of polypropylene (0.0005 at 1 kHz, data sheets, from memory).</value>
    public double LeakLossTangent { get; init; } = 0.005;

    /// <summary>The noise of a reading where nothing was read twice.</summary>
    /// <value>Default 0.5 pF and 0.05 %: the last digit of what is typed, and a bench meter's usual scatter (common practice).</value>
    public ReadingNoise AssumedNoise { get; init; } = new(0.5, 0.0005, double.PositiveInfinity);

    /// <summary>The nominal values of the usual box of 16 relays; null for another number.</summary>
    public static IReadOnlyList<double>? UsualBox(int relays) => relays == 16
        ? [.. Decades.SelectMany(decade => Weights.Select(weight => weight * decade))]
        : null;
}
