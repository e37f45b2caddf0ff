using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The level over the capacitance: readings as dots, the fitted curve behind them.</summary>
public static class CurvePlot
{
    // Three dots at different heights in a cell: the curve is drawn three times finer than the rows.
    private const string Heights = ".·˙";

    /// <summary>The plot of the output at the clips; empty before its first reading.</summary>
    public static IRenderable Draw(BenchStatus status)
    {
        if (status.Readings.Count == 0 || status.Readings[0].Picofarads is null)
            return new PlotBox("level over capacitance").Draw("", "");
        var (low, high) = Window(status);
        var step = (high - low) / (PlotBox.Columns - 1);
        var curve = Enumerable.Range(0, PlotBox.Columns).Select(column => Curve(status, low + (column * step))).ToArray();
        var top = status.Readings.Select(read => read.Millivolts).Concat(curve.Where(double.IsFinite)).Append(double.Epsilon).Max();
        var plot = new PlotBox(FormattableString.Invariant($"level over capacitance, up to {top:0.00} mV"));
        Trace(plot, curve, top);
        foreach (var read in status.Readings)
            plot.Put((int)Math.Round((read.Picofarads!.Value - low) / step), Row(read.Millivolts / top), '●', "bold yellow");
        return plot.Draw(Nanofarads(low), Nanofarads(high));
    }

    // With a fit: three half-widths to either side of the peak, widened to hold the last two readings. Without: what was read.
    private static (double Low, double High) Window(BenchStatus status)
    {
        var places = status.Readings.Select(read => (double)read.Picofarads!.Value).ToList();
        var (low, high) = status.Fit is { HalfWidthPicofarads: > 0 } fit
            ? (fit.Peak.Picofarads - 3 * fit.HalfWidthPicofarads, fit.Peak.Picofarads + 3 * fit.HalfWidthPicofarads)
            : (places.Min() * 0.9, places.Max() * 1.1);
        return (Math.Max(0, Math.Min(low, places.TakeLast(2).Min())), Math.Max(high, places.TakeLast(2).Max()));
    }

    private static void Trace(PlotBox plot, double[] curve, double top)
    {
        for (var column = 0; column < curve.Length; column++)
        {
            if (!double.IsFinite(curve[column]))
                continue;
            var height = (int)Math.Clamp(curve[column] / top * PlotBox.Rows * Heights.Length, 0, (PlotBox.Rows * Heights.Length) - 1);
            plot.Put(column, height / Heights.Length, Heights[height % Heights.Length], "aqua");
        }
    }

    private static double Curve(BenchStatus status, double picofarads) =>
        status.Fit is { } fit && picofarads > 0 ? fit.Curve.LevelAt(Capacitance.FromPicofarads(picofarads)).Millivolts : double.NaN;

    private static int Row(double share) => (int)Math.Clamp(share * PlotBox.Rows, 0, PlotBox.Rows - 1);

    private static string Nanofarads(double picofarads) => FormattableString.Invariant($"{picofarads / 1000:0.0} nF");
}
