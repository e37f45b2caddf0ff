using System.Globalization;
using System.Text.RegularExpressions;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Stock;

/// <summary>A capacitance as a person types it: <c>104.5n</c>, <c>0.1 uF</c>, <c>4n7</c>, <c>820p</c>.</summary>
/// <remarks>The unit letter in the place of the decimal mark is the code of IEC 60062.</remarks>
public static partial class CapacitanceText
{
    /// <summary>What may be typed, for messages.</summary>
    public const string Syntax = "a number with its unit, such as 104.5n, 0.1045u, 4n7 or 820p (a point as decimal mark)";

    /// <summary>Reads a typed capacitance.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>The value to the nearest picofarad; none where the text is not one, or its value not from 1 pF to 1 mF.</returns>
    public static Capacitance? Parse(string text)
    {
        var match = Pattern().Match(text.Trim());
        if (!match.Success)
            return null;
        var number = match.Groups["whole"].Value + "." + match.Groups["part"].Value + "0";
        var picofarads = double.Parse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) * Unit(match.Groups["unit"].Value);
        return picofarads is >= 1 and <= 1e9 ? Capacitance.FromPicofarads(picofarads) : null;
    }

    private static double Unit(string letter) => letter switch { "p" => 1, "n" => 1e3, _ => 1e6 };

    // Micro: u, the micro sign U+00B5, the Greek letter U+03BC.
    [GeneratedRegex(@"^(?:(?<whole>\d{1,9})(?:\.(?<part>\d{1,9}))?\s*(?<unit>[pnu\u00B5\u03BC])F?|(?<whole>\d{1,9})(?<unit>[pnu\u00B5\u03BC])(?<part>\d{1,9}))$", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
