namespace AutoSweep.Instruments.Meters;

/// <summary>A series of level samples that the meter itself spaced evenly.</summary>
/// <param name="Volts">The samples in volts rms, in order.</param>
/// <param name="Interval">From one to the next.</param>
/// <param name="Aperture">How long each averages.</param>
/// <param name="TimeConstant">The detector's time constant.</param>
public sealed record LevelBurst(IReadOnlyList<double> Volts, TimeSpan Interval, TimeSpan Aperture, TimeSpan TimeConstant)
{
    /// <summary>What is left of a swing of the level at a rate: a share of 0 to 1.</summary>
    /// <remarks>A detector of one time constant passes 1/√(1 + (ωτ)²), an average over an aperture a passes sin(ωa/2)/(ωa/2).</remarks>
    /// <param name="hertz">The rate, above 0.</param>
    public double Passes(double hertz)
    {
        var omega = 2 * Math.PI * hertz;
        var half = omega * Aperture.TotalSeconds / 2;
        return (half == 0 ? 1 : Math.Abs(Math.Sin(half) / half)) / Math.Sqrt(1 + Math.Pow(omega * TimeConstant.TotalSeconds, 2));
    }
}
