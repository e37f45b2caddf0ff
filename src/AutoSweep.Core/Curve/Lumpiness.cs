using AutoSweep.Core.Generator;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>How lumpy a level curve is: one number for how much neighbours differ.</summary>
/// <remarks>
/// Only neighbours of consecutive numbers count. An output that is off spoils two steps of some ninety and moves the figure little: outliers are told elsewhere.
/// </remarks>
public static class Lumpiness
{
    // The median of three is the least that one wild step cannot move at will.
    private const int FewestSteps = 3;

    /// <summary>The robust standard deviation, in decibels, of the step from one output to its next neighbour against the target.</summary>
    /// <returns>None with fewer than three neighbouring pairs.</returns>
    public static double? Of(CurveComparison comparison) => Robust(
        Neighbours(comparison).Select(pair => pair.Next.Decibels!.Value - pair.One.Decibels!.Value));

    /// <summary>The same of a curve without a target: levels of neighbours in one filter group; the step from group to group is no lump.</summary>
    /// <returns>None with fewer than three neighbouring pairs.</returns>
    public static double? Of(LevelCurve curve, GeneratorProfile profile)
    {
        var groups = profile.Outputs.ToDictionary(output => output.Number, output => output.Group);
        var read = curve.Points.Where(point => point.Millivolts > 0 && groups.ContainsKey(point.Output)).ToList();
        return Robust(read.Zip(read.Skip(1))
            .Where(pair => pair.Second.Output == pair.First.Output + 1 && groups[pair.First.Output] == groups[pair.Second.Output])
            .Select(pair => 20 * Math.Log10(pair.Second.Millivolts / pair.First.Millivolts)));
    }

    /// <summary>
    /// What the readings' uncertainty alone would make of a perfectly even curve, in decibels: a lumpiness near this says nothing of the generator.
    /// It is stated, not taken out, for the meter's part of it is common to neighbours and cancels in part.
    /// </summary>
    /// <returns>None with fewer than three neighbouring pairs.</returns>
    public static double? OfReadingsAlone(CurveComparison comparison)
    {
        double[] variances = [.. Neighbours(comparison).Select(pair => Variance(pair.One) + Variance(pair.Next))];
        return variances.Length < FewestSteps ? null : Math.Sqrt(variances.Median());
    }

    private static IEnumerable<(CurveDeviation One, CurveDeviation Next)> Neighbours(CurveComparison comparison)
    {
        var read = comparison.Deviations.Where(one => one.Decibels is not null).ToList();
        return read.Zip(read.Skip(1)).Where(pair => pair.Second.Output == pair.First.Output + 1);
    }

    private static double Variance(CurveDeviation one) => Math.Pow(one.UncertaintyDecibels / CurveComparison.CoverageFactor, 2);

    private static double? Robust(IEnumerable<double> steps)
    {
        var all = steps.ToList();
        return all.Count < FewestSteps ? null : RobustScale.Of(all, 0);
    }
}
