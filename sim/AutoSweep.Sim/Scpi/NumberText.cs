using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Sim.Scpi;

/// <summary>Decimal numeric program data with an optional suffix (IEEE 488.2, 7.7.2 and 7.7.3).</summary>
internal static partial class NumberText
{
    private static readonly Dictionary<string, double> Multipliers = new(StringComparer.Ordinal)
    {
        ["G"] = 1e9, ["MA"] = 1e6, ["K"] = 1e3, [""] = 1, ["M"] = 1e-3, ["U"] = 1e-6, ["N"] = 1e-9, ["P"] = 1e-12,
    };

    public static double Read(string text, string unit)
    {
        if (text[0] is '"' or '\'') throw new ScpiErrorException(ScpiError.StringNotAllowed);
        if (text[0] == '(') throw new ScpiErrorException(ScpiError.DataType);
        if (char.IsAsciiLetter(text[0])) throw new ScpiErrorException(ScpiError.CharacterNotAllowed);
        var match = Number().Match(text);
        if (!match.Success) throw new ScpiErrorException(ScpiError.InvalidNumber);
        return double.Parse(match.Groups[1].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture)
            * Multiplier(match.Groups[2].Value.ToUpperInvariant(), unit);
    }

    private static double Multiplier(string suffix, string unit)
    {
        if (suffix.Length == 0) return 1;
        if (unit.Length == 0) throw new ScpiErrorException(ScpiError.SuffixNotAllowed);

        // MHZ is megahertz, though MV is millivolt (SCPI-1999 volume 1, 7.3).
        if (suffix == "MHZ" && unit == "HZ") return 1e6;
        return suffix.EndsWith(unit, StringComparison.Ordinal) && Multipliers.TryGetValue(suffix[..^unit.Length], out var multiplier)
            ? multiplier
            : throw new ScpiErrorException(ScpiError.InvalidSuffix);
    }

    [GeneratedRegex(@"^([+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[Ee][+-]?[0-9]+)?)\s*([A-Za-z]*)$")]
    private static partial Regex Number();
}
