using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Charts;

/// <summary>One output's sweep: level over capacitance, the readings and the curve that was fitted through them.</summary>
public static class PeakChart
{
    private const int Steps = 80;

    /// <summary>The chart's SVG.</summary>
    /// <param name="id">A name that no other chart of the page has.</param>
    /// <param name="swept">What the sweep found.</param>
    /// <param name="readings">The readings behind it.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="height">Height in pixels.</param>
    public static string Svg(string id, OutputSwept swept, IReadOnlyList<LevelRead> readings, int width = 300, int height = 190)
    {
        var plot = Chart.Empty("capacitance (nF)", "level (mV rms)");
        var read = readings.Where(one => one.Picofarads is not null).ToList();
        if (read.Count > 0)
        {
            var (least, most) = (read.Min(one => one.Picofarads!.Value), read.Max(one => one.Picofarads!.Value));
            if (CurveOf(swept) is { } curve)
                Draw(plot, curve, least - (0.1 * (most - least)), most + (0.1 * (most - least)));
            var points = plot.Add.Markers(read.Select(one => one.Picofarads!.Value / 1000.0).ToArray(), read.Select(one => one.Millivolts).ToArray());
            (points.Color, points.MarkerShape, points.MarkerSize) = (ChartPalette.Ink, ScottPlot.MarkerShape.OpenCircle, 6);
        }

        if (swept.PeakPicofarads is { } peak)
        {
            var line = plot.Add.VerticalLine(peak / 1000.0);
            (line.Color, line.LinePattern, line.LineWidth) = (ChartPalette.Target, ScottPlot.LinePattern.Dotted, 1);
        }

        plot.Axes.Margins(0.05, 0.1);
        var title = FormattableString.Invariant($"Output {swept.Output}: level over capacitance, readings and fitted curve");
        return ChartSvg.Text(plot, id, title, width, height);
    }

    /// <summary>The fitted curve; none where no law of three unknowns holds: the journal does not keep a trap's place.</summary>
    public static ResponseCurve? CurveOf(OutputSwept swept) => (swept, swept.Law) switch
    {
        ({ PeakPicofarads: { } peak, Q: { } q, PeakMillivolts: { } level }, ResponseLaw.Series) => Curve(TunedResponse.Series(peak, q), level, swept),
        ({ PeakPicofarads: { } peak, Q: { } q, PeakMillivolts: { } level }, ResponseLaw.Shunt) => Curve(TunedResponse.Shunt(peak, q), level, swept),
        _ => null,
    };

    private static ResponseCurve Curve(TunedResponse response, double millivolts, OutputSwept swept) =>
        new(response, Level.FromMillivolts(millivolts), Level.FromMillivolts(swept.HumMillivolts ?? 0));

    private static void Draw(ScottPlot.Plot plot, ResponseCurve curve, double least, double most)
    {
        double[] at = [.. Enumerable.Range(0, Steps + 1).Select(step => least + ((most - least) * step / Steps)).Where(picofarads => picofarads > 0)];
        var line = plot.Add.ScatterLine(
            at.Select(picofarads => picofarads / 1000).ToArray(),
            at.Select(picofarads => curve.LevelAt(Capacitance.FromPicofarads(picofarads)).Millivolts).ToArray());
        (line.Color, line.LineWidth) = (ChartPalette.Fit, 1.2f);
    }
}
