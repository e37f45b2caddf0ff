using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>Robust locally weighted regression: at each place a straight line through its nearest neighbours, wild values weighted down.</summary>
/// <remarks>
/// Cleveland, "Robust Locally Weighted Regression and Smoothing Scatterplots", J. Am. Stat. Assoc. 74 (1979): tricube weights over the distance, and bisquare
/// weights over the residual in units of six times the median absolute residual. Checked against statsmodels' lowess.
/// </remarks>
public static class LocalRegression
{
    // Residuals this small are rounding: weighting by them would be weighting by chance.
    private const double NoResidual = 1e-7;

    // The smallest weight that counts as one when a line needs two points.
    private const double NoWeight = 1e-12;

    /// <summary>Fits every place.</summary>
    /// <param name="places">Ascending, no two equal; at least two.</param>
    /// <param name="values">One a place.</param>
    /// <param name="neighbours">How many places a line is fitted through, itself included; 2 or more.</param>
    /// <param name="rounds">How often the residuals weigh anew; 0 is not robust, Cleveland's paper finds 2 enough.</param>
    public static LocalRegressionFit Fit(IReadOnlyList<double> places, IReadOnlyList<double> values, int neighbours, int rounds)
    {
        double[] trust = [.. values.Select(_ => 1.0)];
        var rows = Rows(places, trust, neighbours);
        for (var round = 0; round < rounds; round++)
        {
            double[] off = [.. values.Select((value, index) => Math.Abs(value - At(rows[index], values)))];
            var median = off.Median();
            if (median <= NoResidual)
                break;
            trust = [.. off.Select(one => RobustLocation.Bisquare(one / (6 * median)))];
            rows = Rows(places, trust, neighbours);
        }
        return new(rows, [.. rows.Select(row => At(row, values))]);
    }

    private static double[][] Rows(IReadOnlyList<double> places, double[] trust, int neighbours) =>
        [.. Enumerable.Range(0, places.Count).Select(index => Row(places, trust, index, Math.Clamp(neighbours, 2, places.Count)))];

    // The fitted value is a weighted sum of all values; this gives the weights.
    private static double[] Row(IReadOnlyList<double> places, double[] trust, int index, int neighbours)
    {
        var at = places[index];
        var radius = places.Select(place => Math.Abs(place - at)).Order().ElementAt(neighbours - 1);
        double[] weights = [.. places.Select((place, other) => Tricube((place - at) / radius) * trust[other])];
        if (weights.Count(weight => weight > NoWeight) < 2)
            return [.. places.Select((_, other) => other == index ? 1.0 : 0)];
        var sum = weights.Sum();
        var mean = places.Select((place, other) => weights[other] / sum * place).Sum();
        var spread = places.Select((place, other) => weights[other] / sum * (place - mean) * (place - mean)).Sum();
        return [.. places.Select((place, other) => weights[other] / sum * (1 + ((at - mean) * (place - mean) / spread)))];
    }

    private static double At(double[] row, IReadOnlyList<double> values) => row.Select((weight, index) => weight * values[index]).Sum();

    private static double Tricube(double u) => Math.Abs(u) < 1 ? Math.Pow(1 - Math.Pow(Math.Abs(u), 3), 3) : 0;
}
