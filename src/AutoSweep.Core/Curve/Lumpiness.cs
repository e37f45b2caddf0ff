using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>How lumpy a level curve is: one number for how much neighbours differ.</summary>
public static class Lumpiness
{
    // Median absolute value of a normal variable in standard deviations: 0.6745 (its 75 % point).
    private const double NormalMedian = 0.67448975;

    /// <summary>The robust standard deviation, in decibels, of the step from one output to its next neighbour against the target.</summary>
    /// <returns>None with fewer than three neighbouring pairs.</returns>
    public static double? Of(CurveComparison comparison)
    {
        var read = comparison.Deviations.Where(one => one.Decibels is not null).ToList();
        var steps = read.Zip(read.Skip(1)).Where(pair => pair.Second.Output == pair.First.Output + 1)
            .Select(pair => Math.Abs(pair.Second.Decibels!.Value - pair.First.Decibels!.Value)).ToList();
        return steps.Count < 3 ? null : steps.Median() / NormalMedian;
    }
}
