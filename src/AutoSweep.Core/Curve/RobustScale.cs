using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>How much values scatter, whatever the wildest half of them do.</summary>
public static class RobustScale
{
    /// <summary>The median absolute value of a standard normal variable: its 75 % point.</summary>
    /// <remarks>Hampel, "The Influence Curve and its Role in Robust Estimation", J. Am. Stat. Assoc. 69 (1974).</remarks>
    public const double NormalMedian = 0.6744897501960817;

    /// <summary>The median absolute deviation from the median, scaled so that it is the standard deviation of normal values.</summary>
    /// <param name="values">At least one.</param>
    public static double Of(IReadOnlyCollection<double> values) => Of(values, values.Median());

    /// <summary>The same about a centre that is known.</summary>
    public static double Of(IEnumerable<double> values, double centre) =>
        values.Select(value => Math.Abs(value - centre)).Median() / NormalMedian;
}
