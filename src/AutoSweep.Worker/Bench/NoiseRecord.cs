namespace AutoSweep.Worker.Bench;

/// <summary>A running estimate of the relative noise of single samples, pooled over readings: three samples alone tell little.</summary>
/// <param name="SumOfSquares">Sum of squared relative deviations seen, with the starting belief in it.</param>
/// <param name="DegreesOfFreedom">How many independent deviations that sum stands for.</param>
public readonly record struct NoiseRecord(double SumOfSquares, double DegreesOfFreedom)
{
    // Half a per cent with the weight of two samples: the middle of the 0.2 to 1 % met on the bench (common practice, no source).
    private const double StartingNoise = 0.005;

    // About thirty readings of memory, so that a noisier output is noticed within a few of its readings.
    private const double Memory = 60;

    // A clip that was moved between two samples shows a spread that is no noise: one reading may say three times what is known.
    private const double MostFromOne = 3;

    /// <summary>The belief before any reading.</summary>
    public static NoiseRecord Start => new(2 * StartingNoise * StartingNoise, 2);

    /// <summary>One standard deviation of a single sample, relative to the level.</summary>
    public double RelativeSd => Math.Sqrt(SumOfSquares / DegreesOfFreedom);

    /// <summary>The estimate after one more reading.</summary>
    /// <param name="relativeSd">Standard deviation of the reading's samples over their mean.</param>
    /// <param name="samples">How many samples it had.</param>
    public NoiseRecord With(double relativeSd, int samples)
    {
        var kept = Math.Min(1, Memory / DegreesOfFreedom);
        var believed = Math.Min(relativeSd, MostFromOne * RelativeSd);
        return new(kept * SumOfSquares + (samples - 1) * believed * believed, kept * DegreesOfFreedom + samples - 1);
    }
}
