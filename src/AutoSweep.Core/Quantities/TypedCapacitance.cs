using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Core.Quantities;

/// <summary>A capacitance as a person types it: <c>104.5n</c>, <c>0.1045u</c>, <c>104500p</c>, <c>104.5 nF</c>, or with the unit in the
/// place of the point, <c>104n5</c> (IEC 60062).</summary>
public static partial class TypedCapacitance
{
    /// <summary>How such a value is written, for messages.</summary>
    public const string Expected = "a number with its unit, such as 104.5n, 0.1045u or 104500p";

    /// <summary>Reads it.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>Picofarads, or null when it is none: without a unit, with a decimal comma, below 0.</returns>
    public static double? Picofarads(string text)
    {
        if (Pattern().Match(text.Trim()) is not { Success: true } match)
            return null;
        var number = match.Groups["whole"].Value + "." + match.Groups["part"].Value + "0";
        return double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value * Factor(match.Groups["unit"].Value)
            : null;
    }

    /// <summary>Reads the capacitance of a part.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>Null when it is none, or none from 1 pF to 1 mF.</returns>
    public static Capacitance? OfPart(string text) =>
        Picofarads(text) is >= 1 and <= 1e9 and var picofarads ? Capacitance.FromPicofarads(picofarads) : null;

    /// <summary>One step of the last digit that was typed, in picofarads: 100 for <c>104.5n</c>, 1000 for <c>104n</c>.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>Null where it is no capacitance.</returns>
    public static double? StepPicofarads(string text) => Pattern().Match(text.Trim()) is { Success: true } match
        ? Factor(match.Groups["unit"].Value) * Math.Pow(10, -match.Groups["part"].Value.Length)
        : null;

    private static double Factor(string unit) => unit switch
    {
        "p" or "P" => 1,
        "n" or "N" => 1e3,
        _ => 1e6,
    };

    // The point and digits before the unit, or the unit as the point; the micro sign has two code points.
    [GeneratedRegex(
        @"^(?<whole>\d{1,9})(?:\.(?<part>\d*))?\s*(?<unit>[pPnNuUµμ])[fF]?$|^(?<whole>\d{1,9})(?<unit>[pPnNuUµμ])(?<part>\d+)[fF]?$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
