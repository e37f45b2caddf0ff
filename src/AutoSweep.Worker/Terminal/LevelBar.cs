using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The level of an output against its band, and which way its magnet goes, readable from a metre away.</summary>
public static class LevelBar
{
    // Decibels from the middle to either end: a rod that is further off is off the scale all the same.
    private const double Reach = 6;

    /// <summary>The bar; an empty frame while nothing is levelled.</summary>
    public static IRenderable Draw(BenchStatus status)
    {
        if (status.Levelling is not { } view)
            return new PlotBox("level against its band").Draw("too soft", "too loud");
        var plot = new PlotBox(FormattableString.Invariant($"{view.Decibels:+0.0;-0.0;0.0} dB, band ±{view.HalfBandDecibels:0.00} dB"));
        Word(plot, view);
        Bar(plot, view);
        return plot.Draw("-6 dB, too soft", "too loud, +6 dB");
    }

    private static void Word(PlotBox plot, LevellingView view)
    {
        var word = view.Order is { } order ? MagnetWords.Name(order.Direction) : IsInBand(view) ? "OK" : "";
        var colour = word switch { "IN" => "red", "OUT" => "aqua", _ => "green" };
        foreach (var (row, line) in BigWord.Lines(word).Index())
            foreach (var (column, sign) in line.Index())
                if (sign != ' ')
                    plot.Put(column + ((PlotBox.Columns - line.Length) / 2), PlotBox.Rows - 1 - row, sign, colour);
    }

    private static void Bar(PlotBox plot, LevellingView view)
    {
        var level = Column(view.Decibels);
        for (var column = 0; column < PlotBox.Columns; column++)
        {
            var isBand = column >= Column(-view.HalfBandDecibels) && column <= Column(view.HalfBandDecibels);
            plot.Put(column, 0, isBand ? '█' : '─', isBand ? "green" : "grey");
            plot.Put(column, 3, isBand ? '█' : '─', isBand ? "green" : "grey");
            var isFilled = column >= Math.Min(level, Column(0)) && column <= Math.Max(level, Column(0));
            for (var row = 1; row <= 2 && isFilled; row++)
                plot.Put(column, row, '█', IsInBand(view) ? "green" : "yellow");
        }
    }

    private static bool IsInBand(LevellingView view) => Math.Abs(view.Decibels) <= view.HalfBandDecibels;

    private static int Column(double decibels) =>
        (int)Math.Round((Math.Clamp(decibels, -Reach, Reach) + Reach) / (2 * Reach) * (PlotBox.Columns - 1));
}
