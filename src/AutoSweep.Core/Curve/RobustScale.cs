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

    /// <summary>
    /// The biweight scale about a centre that is known: the standard deviation of normal values, from more of them than the median deviation uses, so that it
    /// is steadier; values beyond nine median deviations have no say.
    /// </summary>
    /// <remarks>Mosteller and Tukey, Data Analysis and Regression (1977), section 10E: the biweight midvariance with c = 9.</remarks>
    public static double Biweight(IReadOnlyCollection<double> values, double centre)
    {
        var far = BiweightReach * values.Select(value => Math.Abs(value - centre)).Median();
        if (far <= 0)
            return 0;
        double squares = 0, slopes = 0;
        foreach (var value in values)
        {
            var off = value - centre;
            var near = 1 - (off / far * off / far);
            if (near <= 0)
                continue;
            squares += off * off * near * near * near * near;
            slopes += near * ((5 * near) - 4);
        }

        return Math.Sqrt(values.Count * squares) / Math.Abs(slopes);
    }

    // In median absolute deviations; six standard deviations of normal values.
    private const double BiweightReach = 9;
}
