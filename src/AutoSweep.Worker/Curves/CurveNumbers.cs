using System.Globalization;

namespace AutoSweep.Worker.Curves;

/// <summary>Reads the numbers of one file, which must agree on their decimal mark.</summary>
/// <param name="commaAllowed">Whether a comma may be a decimal mark: not where commas separate the cells.</param>
internal sealed class CurveNumbers(bool commaAllowed)
{
    private char? _mark;

    /// <summary>A number from its cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="least">The smallest number that is believed.</param>
    /// <param name="most">The largest.</param>
    /// <returns>The number; or what is wrong with the cell and what to write.</returns>
    internal (double Value, string? Trouble) Read(string cell, double least, double most)
    {
        // A minus sign (U+2212) is what a word processor makes of a hyphen.
        var text = cell.Trim().Replace('\u2212', '-');
        if (MarkTrouble(text) is { } trouble)
            return (0, trouble);
        return !double.TryParse(text.Replace(',', '.'), Style, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value)
            ? (0, $"'{text}' is not a plain number; write digits with one decimal mark, and the unit in the first line")
            : value < least || value > most
                ? (0, string.Create(CultureInfo.InvariantCulture, $"{text} is out of range; write a number from {least:0.######} to {most:0.######}"))
                : (value, null);
    }

    private const NumberStyles Style = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowExponent;

    private string? MarkTrouble(string text)
    {
        char[] marks = [.. text.Where(sign => sign is '.' or ',')];
        if (marks.Length == 0)
            return null;
        if (marks.Length > 1)
            return $"'{text}' has more than one decimal mark; write no thousands separators";
        if (marks[0] == ',' && !commaAllowed)
            return $"'{text}' has a comma in a file whose cells are separated by commas; write a point: {text.Replace(',', '.')}";
        _mark ??= marks[0];
        return _mark == marks[0] ? null : $"'{text}' has another decimal mark than the lines before; use one in the whole file";
    }
}
