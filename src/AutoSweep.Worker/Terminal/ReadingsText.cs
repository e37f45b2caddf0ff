using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The readings of the output at the clips and what the fit makes of them.</summary>
public static class ReadingsText
{
    // The last few readings; the older ones are in the curve.
    private const int Shown = 4;

    /// <summary>The readings as lines, always of the same number.</summary>
    public static IRenderable Draw(BenchStatus status)
    {
        var lines = status.Readings.TakeLast(Shown).Select(Line).Concat(Enumerable.Repeat(" ", Shown)).Take(Shown)
            .Select(line => new Text(line));
        var (peak, shape) = status.Fit is { } fit
            ? (FormattableString.Invariant($" peak {fit.Peak.Nanofarads:0.00} nF ± {fit.PeakSdPicofarads / 1000:0.00} nF"),
                FormattableString.Invariant($" half-width {fit.HalfWidthPicofarads / 1000:0.0} nF, {NameOf(fit.Law)} law"))
            : (" ", " ");
        var bold = new Style(Color.Aqua, decoration: Decoration.Bold);
        return new Rows([.. lines, new Text(peak, bold), new Text(shape, new Style(Color.Aqua))]);
    }

    private static string NameOf(ResponseLaw law) => law switch
    {
        ResponseLaw.Series => "series",
        ResponseLaw.Shunt => "shunt",
        _ => "general",
    };

    private static string Line(LevelRead read)
    {
        var place = read.Picofarads is { } picofarads ? FormattableString.Invariant($"{picofarads / 1000.0,9:0.00} nF") : "";
        return FormattableString.Invariant($"{place} {read.Millivolts,9:0.000} mV{(read.Settled ? "" : "  unsettled")}");
    }
}
