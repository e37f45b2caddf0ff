using AutoSweep.Core.Curve;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>Level over output: the curves of a job on a logarithmic axis, and the target with its tolerance.</summary>
public static class LevelCurveChart
{
    // 34 dB: a dead output would flatten all others; what lies lower is drawn at the edge.
    private const double Span = 50;

    /// <summary>The chart's SVG.</summary>
    /// <param name="id">A name that no other chart of the page has.</param>
    /// <param name="curves">The curves, in the order of the work.</param>
    /// <param name="comparisons">Each against the target; the last one's overall gain places the target.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="height">Height in pixels.</param>
    public static string Svg(string id, IReadOnlyList<LevelCurve> curves, IReadOnlyList<CurveComparison> comparisons, int width = 760, int height = 300)
    {
        var plot = Chart.Empty("output", "level (mV rms)");
        var (least, most) = Range(curves);
        Chart.Logarithmic(plot.Axes.Left, least, most);
        if (comparisons.Count > 0)
            TargetBand.Add(plot, comparisons[^1], off => off.TargetMillivolts is { } wanted ? Math.Log10(wanted) : null, 1 / 20.0);
        foreach (var curve in curves)
            LevelSeries.Add(plot, curve.Stand, curve.Points.Select(point => (point.Output, Math.Log10(Math.Max(point.Millivolts, least)))));
        LevelSeries.Frame(plot, curves);
        plot.Axes.SetLimitsY(Math.Log10(least) - 0.05, Math.Log10(most) + 0.05);
        return ChartSvg.Text(plot, id, "Level of every output in millivolts, with the target and its tolerance", width, height);
    }

    private static (double Least, double Most) Range(IReadOnlyList<LevelCurve> curves)
    {
        var levels = curves.SelectMany(curve => curve.Points).Where(point => point.Millivolts > 0).Select(point => point.Millivolts).ToList();
        if (levels.Count == 0)
            return (1, 10);
        return (Math.Max(levels.Min(), levels.Max() / Span), levels.Max());
    }
}
