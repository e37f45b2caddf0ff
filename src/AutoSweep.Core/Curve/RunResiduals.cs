using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>How far each output of a run lies from what the others predict, and how much that scatters with them.</summary>
/// <param name="Run">The run.</param>
/// <param name="Residuals">Decibels above the prediction; not a number where nothing predicts.</param>
/// <param name="Factors">The residual's standard deviation in units of one output's scatter.</param>
/// <param name="Rule">What predicts.</param>
internal sealed record RunResiduals(CurveRun Run, IReadOnlyList<double> Residuals, IReadOnlyList<double> Factors, OutlierRule Rule)
{
    // Two outputs cannot tell which of them is off.
    private const int FewestOutputs = 3;

    // A fitted value that is all but the output's own says nothing of it.
    private const double OwnValueOnly = 0.99;

    /// <summary>The residuals in units in which all have the scatter of one output.</summary>
    internal IEnumerable<double> Standardised => Residuals.Zip(Factors, (residual, factor) => residual / factor).Where(double.IsFinite);

    /// <summary>The residuals of a run.</summary>
    internal static RunResiduals Of(CurveRun run, LevelOutlierOptions options) =>
        run.Outputs.Count >= options.ShortRun ? OfLines(run, options)
        : run.Outputs.Count >= FewestOutputs ? OfMedian(run)
        : new(run, [.. run.Decibels.Select(_ => double.NaN)], [.. run.Decibels.Select(_ => 1.0)], OutlierRule.None);

    /// <summary>The verdict on each output.</summary>
    /// <param name="scatter">One standard deviation of a healthy output in decibels.</param>
    /// <param name="threshold">How many count as far.</param>
    internal IEnumerable<LevelOutlier> Judge(double scatter, double threshold) => Run.Outputs.Select((output, index) =>
    {
        var scale = Math.Max(scatter, Run.Uncertainties[index]) * Factors[index];
        var residual = Residuals[index];
        return double.IsFinite(residual)
            ? new LevelOutlier(output, residual, scale, Rule, Verdict(residual, threshold * scale))
            : new LevelOutlier(output, null, scale, OutlierRule.None, OutlierVerdict.NotJudged);
    });

    private static OutlierVerdict Verdict(double residual, double far) => Math.Abs(residual) <= far ? OutlierVerdict.OnTheCurve
        : residual > 0 ? OutlierVerdict.Above : OutlierVerdict.Below;

    private static RunResiduals OfMedian(CurveRun run)
    {
        var median = run.Decibels.Median();
        return new(run, [.. run.Decibels.Select(one => one - median)], [.. run.Decibels.Select(_ => 1.0)], OutlierRule.GroupMedian);
    }

    // With leverage h the residual against a line fitted without the output itself is r / (1 - h) (Cook and Weisberg, Residuals and Influence in
    // Regression, 1982, section 2.2).
    private static RunResiduals OfLines(CurveRun run, LevelOutlierOptions options)
    {
        var fit = LocalRegression.Fit([.. run.Outputs.Select(output => (double)output)], run.Decibels, options.Neighbours, options.RobustRounds);
        double Left(int index) => fit.Leverage(index) > OwnValueOnly ? double.NaN : 1 - fit.Leverage(index);
        return new(
            run,
            [.. run.Decibels.Select((one, index) => (one - fit.Fitted[index]) / Left(index))],
            [.. run.Decibels.Select((_, index) => Math.Sqrt(fit.ResidualVariance(index)) / Left(index))],
            OutlierRule.LocalRegression);
    }
}
