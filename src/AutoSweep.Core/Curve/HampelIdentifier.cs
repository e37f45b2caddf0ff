using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>Which of a handful of values do not belong: those far from the median in units of the median absolute deviation.</summary>
/// <param name="Centre">The median.</param>
/// <param name="Scale">The scaled median absolute deviation.</param>
/// <param name="Threshold">How many of these count as far.</param>
/// <remarks>Davies and Gather, "The Identification of Multiple Outliers", J. Am. Stat. Assoc. 88 (1993), after Hampel.</remarks>
public sealed record HampelIdentifier(double Centre, double Scale, double Threshold)
{
    /// <summary>The identifier of some values.</summary>
    /// <param name="values">At least one.</param>
    /// <param name="threshold">Above 0; 3 is Hampel's own choice.</param>
    /// <param name="leastScale">What the scale is at least: of three values the deviation is often 0 by chance.</param>
    public static HampelIdentifier Of(IReadOnlyCollection<double> values, double threshold, double leastScale = 0) =>
        new(values.Median(), Math.Max(leastScale, RobustScale.Of(values)), threshold);

    /// <summary>Whether a value is far from the others.</summary>
    public bool IsFar(double value) => Math.Abs(value - Centre) > Threshold * Scale;
}
