using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Reports;

/// <summary>A level curve of the job against its target, in figures.</summary>
/// <param name="Stand">When it was read.</param>
/// <param name="Outputs">How many outputs were read.</param>
/// <param name="GainDecibels">The generator's overall gain over the target in decibels; none without a target.</param>
/// <param name="LumpinessDecibels">The robust step from neighbour to neighbour in decibels; none with too few neighbours.</param>
/// <param name="Outside">The outputs that are outside the target's tolerance by more than the readings' uncertainty.</param>
public sealed record ReportStand(
    CurveStand Stand, int Outputs, double? GainDecibels, double? LumpinessDecibels, IReadOnlyList<int> Outside)
{
    /// <summary>The figures of a curve.</summary>
    public static ReportStand Of(LevelCurve curve, CurveComparison comparison) => new(
        curve.Stand, curve.Points.Count,
        comparison.Deviations.Any(one => one.Decibels is not null) ? comparison.GainDecibels : null,
        Lumpiness.Of(comparison),
        [.. comparison.Deviations.Where(one => one.Verdict is CurveVerdict.TooLoud or CurveVerdict.TooSoft).Select(one => one.Output)]);
}
