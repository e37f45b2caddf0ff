using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>The level curves of a job and the target that they are held against.</summary>
/// <param name="Target">The target in force.</param>
/// <param name="Curves">The curves that were read, in the order of the work.</param>
/// <param name="Comparisons">Each against the target.</param>
public sealed record ReportCurves(TargetCurve Target, IReadOnlyList<LevelCurve> Curves, IReadOnlyList<CurveComparison> Comparisons)
{
    /// <summary>The curves of a job.</summary>
    public static ReportCurves Of(JobState state)
    {
        var target = TargetCurve.Of(state);
        List<LevelCurve> curves = [.. Enum.GetValues<CurveStand>().Select(stand => LevelCurve.Of(state, stand)).Where(curve => curve.Points.Count > 0)];
        return new(target, curves, [.. curves.Select(curve => CurveComparison.Of(curve, target))]);
    }

    /// <summary>What a curve says of an output; none where it was not read then.</summary>
    /// <param name="stand">The curve.</param>
    /// <param name="output">The output's number.</param>
    /// <param name="entry">The journal entry of the reading.</param>
    public ReportLevel? At(CurveStand stand, int output, long? entry)
    {
        var place = Curves.Index().FirstOrDefault(curve => curve.Item.Stand == stand);
        if (place.Item?.Points.FirstOrDefault(point => point.Output == output) is not { } point)
            return null;
        var off = Comparisons[place.Index].Deviations.First(one => one.Output == output);
        return new(point.Millivolts, point.RelativeUncertainty, off.TargetMillivolts, off.Decibels, off.UncertaintyDecibels, off.Verdict, entry);
    }
}
