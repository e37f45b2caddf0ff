using System.Globalization;
using System.Xml.Linq;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>A chart as SVG that can stand inside an HTML page: text stays text, in whatever font the reader has.</summary>
public static class ChartSvg
{
    /// <summary>Fonts that the usual systems bring; the last name is always there (CSS Fonts 4, 2.1.3).</summary>
    public const string Fonts = "'Segoe UI', 'Helvetica Neue', Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The chart's SVG.</summary>
    /// <param name="plot">The chart.</param>
    /// <param name="id">A name that no other chart of the page has: letters, digits and hyphens.</param>
    /// <param name="title">What it shows, for those who hear the page.</param>
    /// <param name="width">Its width in pixels; scaled to the page afterwards.</param>
    /// <param name="height">Its height in pixels.</param>
    public static string Text(Plot plot, string id, string title, int width, int height)
    {
        ChartFont.Use(plot);
        var root = XDocument.Parse(plot.GetSvgXml(width, height)).Root!;
        root.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        root.SetAttributeValue("width", "100%");
        root.SetAttributeValue("height", null);
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-labelledby", id + "-title");
        root.SetAttributeValue(XNamespace.Xmlns + "xlink", null);
        root.AddFirst(new XElement(Svg + "title", new XAttribute("id", id + "-title"), title));
        foreach (var text in root.Descendants(Svg + "text"))
            Loosen(text);
        NameClips(root, id);
        return root.ToString(SaveOptions.DisableFormatting);
    }

    // The library places every letter by the metrics of the font that it found on this machine. The reader's may be another: keep
    // only where the text is anchored. Its letters begin at 0 (left), at minus half the width (centred) or at minus the width.
    private static void Loosen(XElement text)
    {
        var starts = Numbers(text.Attribute("x")?.Value);
        text.Value = text.Value.Trim();
        if (starts.Length == 0)
            return;
        var width = starts.Length > 1 ? (starts[^1] - starts[0]) * starts.Length / (starts.Length - 1) : Math.Abs(starts[0]) * 2;
        var anchor = Math.Round(-2 * starts[0] / Math.Max(width, 1e-9)) switch
        {
            <= 0 => "start",
            1 => "middle",
            _ => "end",
        };
        text.SetAttributeValue("x", "0");
        text.SetAttributeValue("y", Numbers(text.Attribute("y")?.Value).FirstOrDefault().ToString(CultureInfo.InvariantCulture));
        text.SetAttributeValue("text-anchor", anchor);
        text.SetAttributeValue("font-family", Fonts);
    }

    // The library numbers its clip paths by the process, so that a chart made twice would differ: here by the chart.
    private static void NameClips(XElement root, string id)
    {
        var names = root.Descendants(Svg + "clipPath").Select(clip => clip.Attribute("id")!.Value).Index()
            .ToDictionary(clip => clip.Item, clip => string.Create(CultureInfo.InvariantCulture, $"{id}-clip-{clip.Index + 1}"));
        foreach (var clip in root.Descendants(Svg + "clipPath"))
            clip.SetAttributeValue("id", names[clip.Attribute("id")!.Value]);
        foreach (var use in root.Descendants().Attributes("clip-path"))
            use.Value = $"url(#{names[use.Value["url(#".Length..^1]]})";
    }

    private static double[] Numbers(string? list) =>
        [.. (list ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
