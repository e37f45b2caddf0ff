using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>One curve of the job in figures.</summary>
/// <param name="Stand">When it was read.</param>
/// <param name="Comparison">Against the target.</param>
/// <param name="Outliers">Against its own neighbours.</param>
/// <param name="LumpinessDecibels">The robust step from neighbour to neighbour in decibels; none with too few neighbours.</param>
/// <param name="ReadingsAloneDecibels">What the readings' uncertainty alone would make of an even curve, in decibels.</param>
public sealed record LevelStand(
    CurveStand Stand, CurveComparison Comparison, LevelOutliers Outliers, double? LumpinessDecibels, double? ReadingsAloneDecibels)
{
    /// <summary>The figures of a curve.</summary>
    public static LevelStand Of(GeneratorProfile profile, LevelCurve curve, CurveComparison comparison) => new(
        curve.Stand, comparison, LevelOutliers.Of(profile, comparison),
        // Without a target, neighbours are compared with each other.
        Lumpiness.Of(comparison) ?? Lumpiness.Of(curve, profile), Lumpiness.OfReadingsAlone(comparison));

    /// <summary>How many outputs have a verdict.</summary>
    public int Count(CurveVerdict verdict) => Comparison.Deviations.Count(one => one.Verdict == verdict);

    /// <summary>Whether anything could be compared with a target.</summary>
    public bool IsCompared => Comparison.Deviations.Any(one => one.Decibels is not null);
}
