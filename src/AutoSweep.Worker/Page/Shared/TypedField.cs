using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Page.Shared;

/// <summary>What a person types into a field, held against what it may be.</summary>
public static class TypedField
{
    /// <summary>The longest line where nothing shorter is needed.</summary>
    public const int LongestLine = 120;

    /// <summary>A number; a decimal comma is read too.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="what">What the field is called, with its unit.</param>
    /// <param name="least">The least that is taken.</param>
    /// <param name="most">The most that is taken.</param>
    /// <exception cref="BenchFaultException">No number, or outside.</exception>
    public static double Number(string? typed, string what, double least, double most) =>
        double.TryParse(typed?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture, out var number)
        && number >= least && number <= most ? number
            : throw Refuse(typed, what, string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}"));

    /// <summary>The same where the field may stay empty.</summary>
    /// <exception cref="BenchFaultException">No number, or outside.</exception>
    public static double? NumberOrNone(string? typed, string what, double least, double most) =>
        string.IsNullOrWhiteSpace(typed) ? null : Number(typed, what, least, most);

    /// <summary>A whole number.</summary>
    /// <exception cref="BenchFaultException">No whole number.</exception>
    public static int Whole(string? typed, string what) => TryWhole(typed, out var number)
        ? number : throw Refuse(typed, what, "a whole number, in digits only");

    /// <summary>A whole number between two ends, where the field may stay empty.</summary>
    /// <exception cref="BenchFaultException">No whole number, or outside.</exception>
    public static int? WholeOrNone(string? typed, string what, int least, int most) => string.IsNullOrWhiteSpace(typed) ? null
        : TryWhole(typed, out var number) && number >= least && number <= most ? number
        : throw Refuse(typed, what, string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"));

    /// <summary>A capacitance with its unit, where the field may stay empty.</summary>
    /// <exception cref="BenchFaultException">No capacitance, or none that a part has.</exception>
    public static Capacitance? CapacitanceOrNone(string? typed, string what) => string.IsNullOrWhiteSpace(typed) ? null
        : TypedCapacitance.OfPart(typed) ?? throw Refuse(typed, what, TypedCapacitance.Expected);

    /// <summary>A line of text that must be there.</summary>
    /// <exception cref="BenchFaultException">Empty, too long, or with signs that no line has.</exception>
    public static string Text(string? typed, string what, int longest) =>
        TextOrNone(typed, what, longest) ?? throw Refuse(typed, what, string.Create(CultureInfo.InvariantCulture, $"1 to {longest} letters"));

    /// <summary>The same where the field may stay empty.</summary>
    /// <exception cref="BenchFaultException">Too long, or with signs that no line has.</exception>
    public static string? TextOrNone(string? typed, string what, int longest = LongestLine)
    {
        var text = typed?.Trim() ?? "";
        if (text.Length > longest || text.Any(char.IsControl))
            throw Refuse(text.Length > longest ? $"{text.Length} letters" : text, what,
                string.Create(CultureInfo.InvariantCulture, $"one line of at most {longest} letters"));
        return text.Length == 0 ? null : text;
    }

    /// <summary>A number as a field shows it; empty for none.</summary>
    public static string Shown(double? value) => value?.ToString("0.#########", CultureInfo.InvariantCulture) ?? "";

    /// <summary>The fault of a field.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="what">What the field is called.</param>
    /// <param name="expected">What may stand there.</param>
    public static BenchFaultException Refuse(string? typed, string what, string expected) => new(
        BenchFault.BadFile, $"{what}: {(string.IsNullOrWhiteSpace(typed) ? "nothing" : $"\"{typed.Trim()}\"")}",
            expected, "correct this field; nothing was changed");

    private static bool TryWhole(string? typed, out int number) =>
        int.TryParse(typed?.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
