using AutoSweep.Worker.Bench;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The readings of the output at the clips and what the fit makes of them.</summary>
public static class ReadingsText
{
    // The last few readings; the older ones are in the curve.
    private const int Shown = 4;

    /// <summary>The readings as lines.</summary>
    public static IRenderable Draw(BenchStatus status)
    {
        var lines = status.Readings.TakeLast(Shown)
            .Select(read => FormattableString.Invariant($"{read.Picofarads / 1000.0,9:0.00} nF {read.Millivolts,9:0.000} mV{(read.Settled ? "" : "  unsettled")}"))
            .Concat(Enumerable.Repeat(" ", Shown)).Take(Shown)
            .Select(line => (IRenderable)new Text(line));
        var fit = status.Fit is { } best
            ? FormattableString.Invariant($"peak {best.Peak.Nanofarads:0.00} nF ± {best.PeakSdPicofarads / 1000:0.00}   half-width {best.HalfWidthPicofarads / 1000:0.0} nF   {best.Law}")
            : " ";
        return new Rows([.. lines, new Text(fit, new Style(decoration: Decoration.Bold))]);
    }
}
