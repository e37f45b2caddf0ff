using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Charts;

/// <summary>Deviation from the target over output, overall gain taken out: how lumpy the generator is.</summary>
public static class DeviationChart
{
    // A dead output would flatten all others: what lies further off is drawn at the edge.
    private const double Edge = 12;

    /// <summary>The chart's SVG.</summary>
    /// <param name="id">A name that no other chart of the page has.</param>
    /// <param name="curves">The curves, in the order of the work.</param>
    /// <param name="comparisons">Each against the target.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="height">Height in pixels.</param>
    public static string Svg(string id, IReadOnlyList<LevelCurve> curves, IReadOnlyList<CurveComparison> comparisons, int width = 760, int height = 260)
    {
        var plot = Chart.Empty("output", "deviation from target (dB)");
        if (comparisons.Count > 0)
            TargetBand.Add(plot, comparisons[^1], off => off.TargetMillivolts is null ? null : 0, 1);
        foreach (var (curve, comparison) in curves.Zip(comparisons))
        {
            LevelSeries.Add(plot, curve.Stand, comparison.Deviations.Where(off => off.Decibels is not null)
                .Select(off => (off.Output, Math.Clamp(off.Decibels!.Value, -Edge, Edge))));
        }

        LevelSeries.Frame(plot, curves);
        var largest = comparisons.SelectMany(one => one.Deviations).Select(off => Math.Abs(off.Decibels ?? 0)).DefaultIfEmpty(1).Max();
        var reach = Math.Min(Edge, Math.Max(2, largest)) * 1.06;
        plot.Axes.SetLimitsY(-reach, reach);
        return ChartSvg.Text(plot, id, "Deviation of every output from the target in decibels, with the tolerance", width, height);
    }
}
