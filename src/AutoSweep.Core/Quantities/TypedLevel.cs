using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Core.Quantities;

/// <summary>A level as a person types it off a meter: <c>12.4</c> in the unit of the prompt, <c>12.4m</c>, <c>12.4 mV</c>, <c>0.0124 V</c>, <c>12,4</c>.</summary>
/// <param name="Volts">The level in volts rms.</param>
/// <param name="StepVolts">One step of the last digit typed, in volts: <c>12.4 mV</c> has 0.1 mV, <c>12.40 mV</c> a tenth of that.</param>
public readonly partial record struct TypedLevel(double Volts, double StepVolts)
{
    /// <summary>How such a value is written, for messages.</summary>
    public const string Expected = "a level such as 12.4 (in mV), 12.4m, 0.0124 V or 850u";

    /// <summary>Reads it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unitVolts">The unit of a bare number, in volts; a millivolt by default.</param>
    /// <returns>None when it is none: another unit, two points, below 0.</returns>
    public static TypedLevel? Parse(string text, double unitVolts = 1e-3)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (Pattern().Match(text.Trim()) is not { Success: true } match)
            return null;
        var (whole, part) = (match.Groups["whole"].Value, match.Groups["part"].Value);
        if (!double.TryParse($"0{whole}.{part}0", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            return null;
        var unit = match.Groups["unit"].Value switch
        {
            "" => unitVolts,
            "u" or "U" or "µ" or "μ" => 1e-6,
            "m" or "M" => 1e-3,
            _ => 1,
        };
        return new(number * unit, Math.Pow(10, -part.Length) * unit);
    }

    // A decimal comma is a point; the micro sign has two code points. A bare V is volts, a bare prefix is that many volts.
    [GeneratedRegex(@"^(?<whole>\d{0,7})(?:[.,](?<part>\d{0,7}))?(?<=\d[.,]?)\s*(?:(?<unit>[uUµμmM])[vV]?|(?<unit>[vV]))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
