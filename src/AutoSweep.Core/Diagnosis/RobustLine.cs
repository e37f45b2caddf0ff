using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Diagnosis;

/// <summary>A straight line with bisquare weights (Mosteller and Tukey's six-MAD cut, as in robust LOESS).</summary>
internal static class RobustLine
{
    private const int Rounds = 8;

    public static double[] Fit(double[] x, double[] y)
    {
        var weights = Enumerable.Repeat(1.0, x.Length).ToArray();
        var fitted = new double[x.Length];
        for (var round = 0; round < Rounds; round++)
        {
            var (level, slope, centre) = Line(x, y, weights);
            fitted = [.. x.Select(place => level + (slope * (place - centre)))];
            var cut = 6 * y.Zip(fitted, (one, line) => Math.Abs(one - line)).Median();
            weights = [.. y.Zip(fitted, (one, line) => Bisquare((one - line) / Math.Max(cut, 1e-9)))];
        }

        return fitted;
    }

    private static double Bisquare(double share) => Math.Abs(share) >= 1 ? 0 : Math.Pow(1 - (share * share), 2);

    private static (double Level, double Slope, double Centre) Line(double[] x, double[] y, double[] weights)
    {
        var sum = weights.Sum();
        var centre = x.Zip(weights, (place, weight) => place * weight).Sum() / sum;
        var level = y.Zip(weights, (one, weight) => one * weight).Sum() / sum;
        var spread = x.Zip(weights, (place, weight) => weight * (place - centre) * (place - centre)).Sum();
        var slope = Enumerable.Range(0, x.Length).Sum(i => weights[i] * (x[i] - centre) * (y[i] - level)) / Math.Max(spread, 1e-9);
        return (level, slope, centre);
    }
}
