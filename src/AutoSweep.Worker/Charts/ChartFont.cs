using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>The font by which charts are laid out.</summary>
/// <remarks>
/// It lies beside the program: a machine without a screen often has no font at all, and a chart laid out there would have no text. Only
/// the room that text takes is measured with it; the reader sees the fonts of <see cref="ChartSvg.Fonts"/>.
/// </remarks>
internal static class ChartFont
{
    private const string Name = "AutoSweep chart";

    static ChartFont() => Fonts.AddFontFile(Name, Path.Combine(AppContext.BaseDirectory, "fonts", "DejaVuSans-subset.ttf"));

    /// <summary>Lays a chart's text out by this font. Called last, when all of the text is there.</summary>
    public static void Use(Plot plot)
    {
        plot.Font.Set(Name);
        plot.Legend.FontName = Name;
    }
}
