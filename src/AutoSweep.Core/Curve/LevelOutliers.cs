using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Curve;

/// <summary>The outputs of a level curve against the shape that their own neighbours make.</summary>
/// <param name="Outputs">One an output that was read, in ascending number.</param>
/// <param name="Steps">Where a group's curve steps as a whole; the outputs beside a step are compared with their own side.</param>
/// <remarks>
/// Neighbours are outputs of one filter group. Where the whole group has targets, deviations from them are compared, else the levels themselves. So neither
/// a loud low octave nor the step from one filter group to the next is an outlier, and no fixed distance is.
/// </remarks>
public sealed record LevelOutliers(IReadOnlyList<LevelOutlier> Outputs, IReadOnlyList<CurveStep> Steps)
{
    // Below this nothing is a scatter: a hundredth of what a meter of four and a half digits resolves. Only made-up curves are smoother.
    private const double LeastScatter = 1e-4;

    /// <summary>Only the outliers.</summary>
    public IEnumerable<LevelOutlier> Outliers => Outputs.Where(one => one.IsOutlier);

    /// <summary>Judges every output of a comparison.</summary>
    /// <param name="profile">The generator, for its groups.</param>
    /// <param name="comparison">The curve against its target; against an empty target where there is none.</param>
    /// <param name="options">How; the defaults where none are given.</param>
    public static LevelOutliers Of(GeneratorProfile profile, CurveComparison comparison, LevelOutlierOptions? options = null)
    {
        options ??= new();
        var groups = CurveRun.Of(profile, comparison);
        double[] differences = [.. groups.SelectMany(group => group.Differences)];
        // Two neighbours' scatter is in each difference.
        var scatter = differences.Length == 0 ? LeastScatter : Math.Max(LeastScatter, RobustScale.Of(differences) / Math.Sqrt(2));
        var finder = new StepFinder(scatter, options.StepThreshold);
        var runs = groups.Select(group => finder.Cut(group).Select(run => RunResiduals.Of(run, options)).ToList()).ToList();
        var shared = Scatter([.. runs.SelectMany(group => group).SelectMany(run => run.Standardised)], scatter);
        var judged = runs.SelectMany(group => Judge(group, shared, options)).ToDictionary(one => one.Output);
        return new(
            [.. comparison.Deviations.Select(one => judged.GetValueOrDefault(one.Output) ?? NotJudged(one.Output))],
            [.. runs.SelectMany(StepsOf)]);
    }

    private static IEnumerable<LevelOutlier> Judge(List<RunResiduals> group, double shared, LevelOutlierOptions options)
    {
        double[] standardised = [.. group.SelectMany(run => run.Standardised)];
        // One bad output of five is beyond what the steadier figure can stand.
        var own = standardised.Length < options.ShortRun
            ? Math.Max(LeastScatter, RobustScale.Of(standardised.DefaultIfEmpty(), 0))
            : Scatter(standardised, shared);
        var (count, others) = (standardised.Length, options.SharedScatterWeight);
        var scatter = Math.Sqrt(((count * own * own) + (others * shared * shared)) / (count + others));
        return group.SelectMany(run => run.Judge(scatter, options.Threshold));
    }

    private static double Scatter(double[] standardised, double otherwise) =>
        standardised.Length == 0 ? otherwise : Math.Max(LeastScatter, RobustScale.Biweight(standardised, 0));

    private static IEnumerable<CurveStep> StepsOf(List<RunResiduals> group) => group.Zip(group.Skip(1), (below, above) =>
        new CurveStep(below.Run.Outputs[^1], above.Run.Outputs[0], above.Run.Decibels[0] - below.Run.Decibels[^1]));

    private static LevelOutlier NotJudged(int output) => new(output, null, 0, OutlierRule.None, OutlierVerdict.NotJudged);
}
