using AutoSweep.Core.Curve;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>The target and what it tolerates, behind the curves.</summary>
internal static class TargetBand
{
    /// <summary>Adds it.</summary>
    /// <param name="plot">The chart.</param>
    /// <param name="comparison">The comparison whose target is drawn.</param>
    /// <param name="place">Where an output's target stands on the axis; none without a target.</param>
    /// <param name="perDecibel">How far a decibel reaches on the axis.</param>
    public static void Add(Plot plot, CurveComparison comparison, Func<CurveDeviation, double?> place, double perDecibel)
    {
        var points = comparison.Deviations.Where(off => place(off) is not null).ToList();
        if (points.Count < 2)
            return;
        double[] outputs = [.. points.Select(off => (double)off.Output)];
        double[] middle = [.. points.Select(off => place(off)!.Value)];
        double[] reach = [.. points.Select(off => off.ToleranceDecibels * perDecibel)];
        var band = plot.Add.FillY(outputs, [.. middle.Zip(reach, (at, by) => at - by)], [.. middle.Zip(reach, (at, by) => at + by)]);
        (band.FillColor, band.LineWidth) = (ChartPalette.Band, 0);
        var line = plot.Add.ScatterLine(outputs, middle);
        (line.Color, line.LineWidth, line.LegendText) = (ChartPalette.Target, 0.8f, "target and tolerance");
    }
}
