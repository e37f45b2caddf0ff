using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The level over the capacitance: readings as dots, the fitted curve behind them.</summary>
public static class CurvePlot
{
    private const int Columns = 46;
    private const int Rows = 9;

    /// <summary>The plot of the output at the clips; empty before its first reading.</summary>
    public static IRenderable Draw(BenchStatus status)
    {
        var grid = Enumerable.Range(0, Rows).Select(_ => Enumerable.Repeat(' ', Columns).ToArray()).ToArray();
        if (status.Readings.Count > 0 && status.Readings[0].Picofarads is not null)
            Fill(grid, status);
        return new Panel(new Text(string.Join('\n', grid.Select(row => new string(row))))) { Border = BoxBorder.Square, BorderStyle = new Style(Color.Grey), Padding = new Padding(0) };
    }

    private static void Fill(char[][] grid, BenchStatus status)
    {
        var places = status.Readings.Select(read => read.Picofarads!.Value / 1.0).ToList();
        var (low, high) = Window(places, status);
        var curve = Enumerable.Range(0, Columns).Select(column => Curve(status, low + (high - low) * column / (Columns - 1))).ToArray();
        var top = status.Readings.Select(read => read.Millivolts).Concat(curve.Where(double.IsFinite)).Max();
        for (var column = 0; column < Columns; column++)
            Put(grid, column, curve[column] / top, '·');
        foreach (var read in status.Readings)
            Put(grid, (int)Math.Round((read.Picofarads!.Value - low) / (high - low) * (Columns - 1)), read.Millivolts / top, '●');
    }

    // With a fit: three half-widths to either side of the peak, widened to hold the last two readings. Without: what was read.
    private static (double Low, double High) Window(List<double> places, BenchStatus status)
    {
        var (low, high) = status.Fit is { HalfWidthPicofarads: > 0 } fit
            ? (fit.Peak.Picofarads - 3 * fit.HalfWidthPicofarads, fit.Peak.Picofarads + 3 * fit.HalfWidthPicofarads)
            : (places.Min() * 0.9, places.Max() * 1.1);
        return (Math.Min(low, places.TakeLast(2).Min()), Math.Max(high, places.TakeLast(2).Max()));
    }

    private static double Curve(BenchStatus status, double picofarads) =>
        status.Fit is { } fit && picofarads > 0 ? fit.Curve.LevelAt(Capacitance.FromPicofarads(picofarads)).Millivolts : double.NaN;

    private static void Put(char[][] grid, int column, double share, char sign)
    {
        if (column is >= 0 and < Columns && double.IsFinite(share))
            grid[Rows - 1 - (int)Math.Clamp(Math.Round(share * (Rows - 1)), 0, Rows - 1)][column] = sign;
    }
}
