using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>All laws' fits to the same readings, each with its probability.</summary>
internal sealed class LawMixture
{
    // Fits at e^-12 of the best cannot move the answer by a thousandth of its spread.
    private const double Negligible = 12;

    private readonly IReadOnlyList<LawFit> _all;
    private readonly double[] _weights;
    private readonly int _points;

    internal LawMixture(IReadOnlyList<LawFit> fits, int points)
    {
        _all = fits;
        _points = points;
        var top = fits.Count == 0 ? 0 : fits.Max(fit => fit.LogWeight);
        Fits = [.. fits.Where(fit => fit.LogWeight > top - Negligible).OrderByDescending(fit => fit.LogWeight)];
        var sum = Fits.Sum(fit => Math.Exp(fit.LogWeight - top));
        _weights = [.. Fits.Select(fit => Math.Exp(fit.LogWeight - top) / sum)];
        Summarize();
    }

    /// <summary>The fits worth keeping, the most probable first.</summary>
    internal IReadOnlyList<LawFit> Fits { get; }

    internal LawFit Best => Fits[0];

    internal double LogPeak { get; private set; }

    /// <summary>Variance of the peak's logarithm: within the fits, between them, and for readings that scatter more than their noise.</summary>
    internal double LogPeakVariance { get; private set; }

    internal double RelativeHalfWidth { get; private set; }

    /// <summary>The best fit's sum of squares without the beliefs on peak and Q, which may be wrong without any law being so.</summary>
    internal double Misfit => Best.Misfit;

    /// <summary>Whether even the best fit leaves more than chance explains (about one in ten thousand).</summary>
    internal bool Misfits => Misfit > FreeReadings + 4 * Math.Sqrt(2 * FreeReadings) + 8;

    /// <summary>The 95 % bound on the level lost at the peak (shunt law: 10·log10(1 + (error/half-width)²)).</summary>
    internal double LossBoundDecibels => 10 * Math.Log10(1 + 1.96 * 1.96 * LogPeakVariance / (RelativeHalfWidth * RelativeHalfWidth));

    // Level, peak and Q take three of the readings; hum and drift come with their own beliefs.
    private double FreeReadings => Math.Max(1, _points - 3);

    internal double LogEvidence(ResponseLaw law) =>
        _all.Where(fit => fit.Law == law).Select(fit => fit.LogEvidence).DefaultIfEmpty(double.NegativeInfinity).Max();

    /// <summary>How much a reading here is expected to lessen the variance of the peak's logarithm.</summary>
    internal double Gain(double picofarads, double minutes, double noise)
    {
        double meanLevel = 0, meanSquare = 0, within = 0, shared = 0;
        for (var i = 0; i < _weights.Length; i++)
        {
            var (level, variance, covariance) = Fits[i].Predict(picofarads, minutes);
            if (!double.IsFinite(level))
                continue;
            meanLevel += _weights[i] * level;
            meanSquare += _weights[i] * level * level;
            within += _weights[i] * variance;
            shared += _weights[i] * (covariance + level * (Fits[i].LogPeak - LogPeak));
        }
        return shared * shared / (within + Math.Max(0, meanSquare - meanLevel * meanLevel) + noise * noise);
    }

    internal PeakFit Summary()
    {
        var peak = Math.Exp(LogPeak);
        var level = Math.Exp(Best.LogLevel);
        return new PeakFit(
            Capacitance.FromPicofarads(peak),
            peak * Math.Sqrt(LogPeakVariance),
            peak * RelativeHalfWidth,
            Best.Law,
            new ResponseCurve(Best.Response, new Level(level), new Level(level * Math.Sqrt(Math.Max(0, Best.HumPower)))),
            LossBoundDecibels);
    }

    private void Summarize()
    {
        for (var i = 0; i < _weights.Length; i++)
        {
            LogPeak += _weights[i] * Fits[i].LogPeak;
            RelativeHalfWidth += _weights[i] * Fits[i].RelativeHalfWidth;
        }
        for (var i = 0; i < _weights.Length; i++)
            LogPeakVariance += _weights[i] * (Fits[i].LogPeakVariance + (Fits[i].LogPeak - LogPeak) * (Fits[i].LogPeak - LogPeak));
        if (Fits.Count > 0)
            LogPeakVariance *= Math.Max(1, Misfit / FreeReadings);
    }
}
