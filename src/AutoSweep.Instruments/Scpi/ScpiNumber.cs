using System.Globalization;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Instruments.Scpi;

/// <summary>Numbers as instruments write them: NR1, NR2, NR3 (IEEE 488.2, 8.7.2 to 8.7.4) and SCPI's special ones (SCPI-1999,
/// 7.2.1).</summary>
public static class ScpiNumber
{
    // SCPI-1999, 7.2.1.4 and 7.2.1.5: 9.9E37 is infinity, 9.91E37 is not a number. Instruments print them with more or fewer digits,
    // some 9.99999E37: told apart by nearness.
    private const double SmallestSpecial = 9.8e37;
    private const double NotANumber = 9.91e37;
    private const double NotANumberSlack = 0.005e37;

    private static readonly string[] OverloadWords = ["INF", "NINF", "+INF", "-INF", "OL", "OVLD", "OVER", "OVERLOAD", "OVERFLOW"];
    private static readonly string[] NoDataWords = ["NAN", "NONE", "----"];

    /// <summary>Reads a reply that should be one number.</summary>
    /// <param name="raw">The reply.</param>
    /// <param name="overloads">Replies that mean overload on this instrument, beside the standard's.</param>
    public static MeterReading Read(string raw, IReadOnlyCollection<string>? overloads = null)
    {
        var text = raw.Trim();
        if (Among(OverloadWords, text) || (overloads is not null && Among(overloads, text)))
            return new(MeterReadingKind.Overload, double.NaN, raw);
        if (Among(NoDataWords, text))
            return new(MeterReadingKind.NoData, double.NaN, raw);
        return Parse(text) is { } value ? OfNumber(value, raw, overloads) : new(MeterReadingKind.Invalid, double.NaN, raw);
    }

    /// <summary>Reads a number; the decimal mark is a point whatever the machine's culture.</summary>
    /// <returns>Null when it is none, or has group separators, a unit or a decimal comma.</returns>
    public static double? Parse(string text) =>
        text.Length > 0 && text.All(static letter => char.IsAsciiDigit(letter) || letter is '+' or '-' or '.' or 'E' or 'e')
        && double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture, out var value)
            ? value
            : null;

    /// <summary>Writes a number so that any instrument reads it: the shortest NR2 or NR3 that gives the same value.</summary>
    public static string Format(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static MeterReading OfNumber(double value, string raw, IReadOnlyCollection<string>? overloads)
    {
        var size = Math.Abs(value);
        if (Math.Abs(size - NotANumber) < NotANumberSlack)
            return new(MeterReadingKind.NoData, double.NaN, raw);
        return size >= SmallestSpecial || (overloads?.Any(word => Parse(word) is { } sentinel && sentinel.Equals(value)) ?? false)
            ? new(MeterReadingKind.Overload, double.NaN, raw)
            : new(MeterReadingKind.Value, value, raw);
    }

    private static bool Among(IEnumerable<string> words, string text) => words.Contains(text, StringComparer.OrdinalIgnoreCase);
}
