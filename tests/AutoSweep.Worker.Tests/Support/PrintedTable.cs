using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>The cells of a record's table, read back from its HTML.</summary>
internal static partial class PrintedTable
{
    /// <summary>The texts of a section's cells, by output and by the figure's name.</summary>
    public static Dictionary<int, Dictionary<string, string>> Read(string html, string section)
    {
        var start = html.IndexOf($"<section id=\"{section}\"", StringComparison.Ordinal);
        Assert.True(start >= 0, $"no section {section}");
        var text = html[start..html.IndexOf("</section>", start, StringComparison.Ordinal)];
        return Row().Matches(text).ToDictionary(
            row => int.Parse(row.Groups[1].Value, CultureInfo.InvariantCulture),
            row => Cell().Matches(row.Groups[2].Value).ToDictionary(cell => cell.Groups[1].Value, cell => WebUtility.HtmlDecode(cell.Groups[2].Value)));
    }

    /// <summary>The number that a cell shows, and half of its last digit: what rounding may have taken.</summary>
    public static (double Value, double Rounding)? Number(string cell)
    {
        var text = cell.Split(' ')[0].Replace('\u2212', '-');
        if (!double.TryParse(text, NumberStyles.Float | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value))
            return null;
        var places = text.Contains('.', StringComparison.Ordinal) ? text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        return (value, 0.5 * Math.Pow(10, -places));
    }

    /// <summary>Compares a cell with what the journal folds to.</summary>
    public static void Shows(double? expected, string cell)
    {
        var number = Number(cell);
        Assert.True(expected is null == number is null, $"the cell says \"{cell}\", the journal {expected}");
        if (expected is { } value)
            Assert.InRange(number!.Value.Value, value - (number.Value.Rounding * 1.000001), value + (number.Value.Rounding * 1.000001));
    }

    [GeneratedRegex("<tr data-output=\"(\\d+)\">(.*?)</tr>", RegexOptions.Singleline)]
    private static partial Regex Row();

    [GeneratedRegex("<td[^>]*data-figure=\"(\\w+)\"[^>]*>(.*?)</td>", RegexOptions.Singleline)]
    private static partial Regex Cell();
}
