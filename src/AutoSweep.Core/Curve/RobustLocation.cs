using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>The centre of values of which some are wild: Tukey's bisquare M-estimate, each value weighted by its own uncertainty.</summary>
/// <remarks>
/// Beaton and Tukey, Technometrics 16 (1974); the tuning constant 4.685 keeps 95 % of the mean's efficiency on normal values. A value farther off than that
/// many of its deviations has no say at all. The scale is fixed beforehand from the median absolute deviation.
/// </remarks>
public static class RobustLocation
{
    /// <summary>Where the bisquare's weight reaches 0, in standard deviations.</summary>
    public const double TuningConstant = 4.685;

    // Rounding of a decibel figure near 10 is 2e-15; a hundred times that has converged.
    private const double Converged = 2e-13;

    // The weights contract the step by a third or more in each round; never seen to need more than 60.
    private const int MostRounds = 500;

    // Values closer than a millionth are one value; keeps a share of equal values from dividing by 0.
    private const double SmallestDeviation = 1e-6;

    /// <summary>The centre of values that are equally well known.</summary>
    public static double Of(IReadOnlyList<double> values) => Of(values, new double[values.Count]);

    /// <summary>The centre.</summary>
    /// <param name="values">At least one.</param>
    /// <param name="uncertainties">One standard deviation of each, in the same unit; 0 or more.</param>
    /// <remarks>A value's variance is its own and the common scatter that the uncertainties do not explain.</remarks>
    public static double Of(IReadOnlyList<double> values, IReadOnlyList<double> uncertainties)
    {
        var median = values.Median();
        return From(median, RobustScale.Of(values, median), values, uncertainties);
    }

    /// <summary>The centre of the half that agrees best: the search begins in the middle of the shortest interval that holds half of the values.</summary>
    /// <param name="values">At least one.</param>
    /// <param name="uncertainties">One standard deviation of each, in the same unit; 0 or more.</param>
    /// <remarks>
    /// Where all of the other half is off to one side, the median lies at the edge of the sound half, and this still in its middle. The start is Rousseeuw's
    /// least median of squares (J. Am. Stat. Assoc. 79 (1984)); its scale has the factor 1 + 5/(n - 1) for few values of Rousseeuw and Leroy, Robust Regression and
    /// Outlier Detection (1987), p. 202.
    /// </remarks>
    public static double OfMost(IReadOnlyList<double> values, IReadOnlyList<double> uncertainties)
    {
        double[] sorted = [.. values.Order()];
        var half = (sorted.Length / 2) + 1;
        if (half >= sorted.Length)
            return Of(values, uncertainties);
        var first = Enumerable.Range(0, sorted.Length - half + 1).MinBy(index => sorted[index + half - 1] - sorted[index]);
        var length = sorted[first + half - 1] - sorted[first];
        var spread = length / 2 / RobustScale.NormalMedian * (1 + (5.0 / (sorted.Length - 1)));
        return From(sorted[first] + (length / 2), spread, values, uncertainties);
    }

    private static double From(double centre, double spread, IReadOnlyList<double> values, IReadOnlyList<double> uncertainties)
    {
        var unexplained = Math.Max(0, (spread * spread) - uncertainties.Select(one => one * one).Median());
        double[] deviations = [.. uncertainties.Select(one => Math.Max(SmallestDeviation, Math.Sqrt(unexplained + (one * one))))];
        for (var round = 0; round < MostRounds; round++)
        {
            var next = Weighted(values, deviations, centre);
            if (Math.Abs(next - centre) < Converged)
                return next;
            centre = next;
        }
        return centre;
    }

    private static double Weighted(IReadOnlyList<double> values, double[] deviations, double centre)
    {
        double sum = 0, weights = 0;
        for (var index = 0; index < deviations.Length; index++)
        {
            var weight = Bisquare((values[index] - centre) / (TuningConstant * deviations[index])) / (deviations[index] * deviations[index]);
            sum += weight * (values[index] - centre);
            weights += weight;
        }
        return weights > 0 ? centre + (sum / weights) : centre;
    }

    /// <summary>Tukey's weight: (1 − u²)² inside ±1, 0 outside.</summary>
    internal static double Bisquare(double u) => Math.Abs(u) < 1 ? (1 - (u * u)) * (1 - (u * u)) : 0;
}
