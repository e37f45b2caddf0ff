using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Diagnosis;

/// <summary>The shape of the level curve with its filters at their peaks, and how far each output lies off it.</summary>
/// <remarks>
/// In decibels against the target curve, group by group: the trend through a group's outputs is a robust local line, so the step between
/// groups and a slow tilt are no deviations. The scale is the generator's own scatter, from the outputs that are not off themselves.
/// </remarks>
internal sealed class CurveShape
{
    // A line through fewer outputs follows each of them; those get one level.
    private const int FewestForLine = 12;

    // Steps between groups of a sound generator are of the order of a decibel (common practice, no source): a small group is
    // drawn to the others by it.
    private const double GroupStepDecibels = 1;

    // A step of more standard deviations than this has a cause of its own, such as a load, and is believed as it is.
    private const double FarStep = 2;

    private const int Rounds = 12;

    private CurveShape(IReadOnlyList<ShapePoint> points) => Points = points;

    /// <summary>The outputs that could be judged.</summary>
    public IReadOnlyList<ShapePoint> Points { get; }

    /// <summary>The shape; none with too few outputs to know the scatter.</summary>
    public static CurveShape? Of(DiagnosisCase job)
    {
        var levels = job.Outputs.Select(one => Level(one, job)).OfType<(OutputEvidence One, double Decibels)>().ToList();
        if (levels.Count < FewestForLine)
            return null;
        // What loads the filtered outputs lowers and scatters them all: either side has its own scatter, and draws its own small groups.
        return new([.. levels.GroupBy(level => level.One.IsFiltered).Where(side => side.Count() >= FewestForLine)
            .SelectMany(side => Side([.. side], Factor(job.Options.CurveFalseAlarm, levels.Count)))]);
    }

    private static (OutputEvidence One, double Decibels)? Level(OutputEvidence one, DiagnosisCase job)
    {
        var millivolts = one.IsFiltered ? (one.HasPeak ? one.Swept!.PeakMillivolts!.Value : 0) : one.HasTone ? one.AsFound!.Millivolts : 0;
        return millivolts > 0 ? (one, 20 * Math.Log10(millivolts / job.Target.GetValueOrDefault(one.Number, 1))) : null;
    }

    private static IEnumerable<ShapePoint> Side(List<(OutputEvidence One, double Decibels)> side, double factor)
    {
        var all = side.Select(level => level.Decibels).Median();
        var groups = side.GroupBy(level => level.One.Output.Group).Select(group => group.ToList()).ToList();
        var rough = 1.4826 * groups.SelectMany(FromMedian).Median();
        var points = groups.SelectMany(group => Trend(group, all, rough)).ToList();
        var scale = Scatter([.. points.Select(point => point.Decibels)], factor);
        return points.Select(point => new ShapePoint(point.One, point.Decibels, scale, factor * scale));
    }

    private static IEnumerable<double> FromMedian(List<(OutputEvidence One, double Decibels)> group)
    {
        var median = group.Select(level => level.Decibels).Median();
        return group.Select(level => Math.Abs(level.Decibels - median));
    }

    private static IEnumerable<(OutputEvidence One, double Decibels)> Trend(List<(OutputEvidence One, double Decibels)> group, double all, double rough)
    {
        var (x, y) = (group.Select(level => (double)level.One.Number).ToArray(), group.Select(level => level.Decibels).ToArray());
        var fitted = group.Count >= FewestForLine ? RobustLine.Fit(x, y) : [.. Enumerable.Repeat(Drawn(y, all, rough), y.Length)];
        return group.Zip(fitted, (level, curve) => (level.One, level.Decibels - curve));
    }

    // The variance of a median is π/2 of the mean's.
    private static double Drawn(double[] levels, double all, double rough)
    {
        var own = GroupStepDecibels * GroupStepDecibels;
        var chance = Math.PI / 2 * rough * rough / levels.Length;
        var step = levels.Median() - all;
        return Math.Abs(step) > FarStep * Math.Sqrt(own + chance) ? all + step : all + (own / (own + chance) * step);
    }

    // Bonferroni on the normal law: how many standard deviations one of so many may be off.
    private static double Factor(double falseAlarm, int count) => Normal.InvCDF(0, 1, 1 - (falseAlarm / (2 * count)));

    // Standard deviation of what is not off, found by leaving out what is, again and again.
    private static double Scatter(double[] off, double factor)
    {
        var scale = 1.4826 * off.Select(Math.Abs).Median();
        for (var round = 0; round < Rounds; round++)
        {
            var kept = off.Where(one => Math.Abs(one) <= factor * scale).ToList();
            scale = Math.Sqrt(kept.Sum(one => one * one) / Math.Max(1, kept.Count - 1));
        }

        return scale;
    }
}
