using AutoSweep.Core.Curve;
using AutoSweep.Worker.Reports;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>One level curve on a chart.</summary>
internal static class LevelSeries
{
    /// <summary>Adds it.</summary>
    public static void Add(Plot plot, CurveStand stand, IEnumerable<(int Output, double Value)> points)
    {
        var all = points.ToList();
        if (all.Count == 0)
            return;
        var look = ChartPalette.Of(stand);
        var series = plot.Add.Scatter(all.Select(one => (double)one.Output).ToArray(), all.Select(one => one.Value).ToArray());
        (series.Color, series.MarkerShape, series.LinePattern, series.LineWidth) = (look.Color, look.Marker, look.Line, look.Width);
        (series.MarkerSize, series.MarkerLineWidth, series.LegendText) = (stand == CurveStand.AsLeft ? 4 : 5, 1, StageWords.Of(stand));
    }

    /// <summary>Sets the axis of outputs, and the legend above the data.</summary>
    public static void Frame(Plot plot, IReadOnlyList<LevelCurve> curves)
    {
        var outputs = curves.SelectMany(curve => curve.Points).Select(point => point.Output).ToList();
        plot.Axes.SetLimitsX(outputs.DefaultIfEmpty(1).Min() - 1, outputs.DefaultIfEmpty(10).Max() + 1);
        var legend = plot.ShowLegend(Edge.Top);
        legend.Legend.Orientation = Orientation.Horizontal;
        (legend.Legend.Padding, legend.Legend.Margin, legend.Legend.TightHorizontalWrapping) = (new(0), new(0), true);
        legend.Padding = new(6);
        (legend.Legend.OutlineWidth, legend.Legend.ShadowColor, legend.Legend.FontSize) = (0, Colors.Transparent, 11);
    }
}
