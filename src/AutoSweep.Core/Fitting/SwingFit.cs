using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Fitting;

/// <summary>A sinusoidal swing about a mean, in evenly spaced samples, at a rate that is known but for the sampler's own clock.</summary>
/// <param name="Mean">The mean of the samples, swing left out.</param>
/// <param name="Depth">The swing's amplitude (peak) as a share of the mean; 0 or more, and by chance never quite 0.</param>
/// <param name="DepthUncertainty">One standard deviation of either quadrature of it, as a share of the mean.</param>
/// <param name="Hertz">The rate that fits best.</param>
/// <remarks>
/// Least squares of mean, cosine and sine (the three-parameter sine fit of IEEE Std 1057, annex from memory), over a comb of rates about the
/// expected one. Samples slower than twice the rate do no harm, because the rate is known: only a rate near half the sampling rate,
/// or near a multiple of it, cannot be told, and its uncertainty says so.
/// </remarks>
public readonly record struct SwingFit(double Mean, double Depth, double DepthUncertainty, double Hertz)
{
    private const int FewestSamples = 8;

    // A comb finer than the samples' own resolution, a quarter of a turn over their whole length.
    private const double CombTurns = 0.25;

    /// <summary>Fits the samples.</summary>
    /// <param name="samples">The samples; mean above 0.</param>
    /// <param name="interval">Between one and the next.</param>
    /// <param name="hertz">The rate expected, above 0.</param>
    /// <param name="spread">How far the rate may be off, as a share: the sampler's clock and the wheel's together.</param>
    /// <returns>None with fewer than 8 samples, without a level, or where the samples cannot tell this rate.</returns>
    public static SwingFit? Of(IReadOnlyList<double> samples, TimeSpan interval, double hertz, double spread)
    {
        if (samples.Count < FewestSamples)
            return null;
        var step = CombTurns / (samples.Count * interval.TotalSeconds);
        var teeth = (int)Math.Ceiling(spread * hertz / step);
        return Enumerable.Range(-teeth, (2 * teeth) + 1).Select(tooth => At(samples, interval, hertz + (teeth == 0 ? 0 : tooth * spread * hertz / teeth)))
            .OfType<(SwingFit Fit, double ChiSquared)>().OrderBy(one => one.ChiSquared).Select(one => (SwingFit?)one.Fit).FirstOrDefault();
    }

    private static (SwingFit Fit, double ChiSquared)? At(IReadOnlyList<double> samples, TimeSpan interval, double hertz)
    {
        var turn = 2 * Math.PI * hertz * interval.TotalSeconds;
        var design = Matrix<double>.Build.Dense(samples.Count, 3, (row, column) => column switch
        {
            0 => 1,
            1 => Math.Cos(turn * row),
            _ => Math.Sin(turn * row),
        });
        try
        {
            var fit = WeightedLeastSquares.Solve(design, Vector<double>.Build.DenseOfEnumerable(samples), Vector<double>.Build.Dense(samples.Count, 1));
            var (mean, cosine, sine) = (fit.Coefficients[0], fit.Coefficients[1], fit.Coefficients[2]);
            if (!(mean > 0))
                return null;
            var variance = fit.Variance * Math.Max(fit.Covariance[1, 1], fit.Covariance[2, 2]);
            var uncertainty = Math.Sqrt(variance) / mean;
            return uncertainty < 1 ? (new(mean, Math.Sqrt((cosine * cosine) + (sine * sine)) / mean, uncertainty, hertz), fit.ChiSquared) : null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
