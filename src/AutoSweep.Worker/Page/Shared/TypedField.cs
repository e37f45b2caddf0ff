using System.Globalization;
using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Shared;

/// <summary>What a person types into a field, held against what it may be.</summary>
public static class TypedField
{
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
    public static int Whole(string? typed, string what) => int.TryParse(typed?.Trim(), NumberStyles.None,
        CultureInfo.InvariantCulture, out var number)
        ? number : throw Refuse(typed, what, "a whole number, in digits only");

    /// <summary>A line of text that must be there.</summary>
    /// <exception cref="BenchFaultException">Empty, too long, or with signs that no line has.</exception>
    public static string Text(string? typed, string what, int longest) =>
        TextOrNone(typed, what, longest) ?? throw Refuse(typed, what, string.Create(CultureInfo.InvariantCulture, $"1 to {longest} letters"));

    /// <summary>The same where the field may stay empty.</summary>
    /// <exception cref="BenchFaultException">Too long, or with signs that no line has.</exception>
    public static string? TextOrNone(string? typed, string what, int longest)
    {
        var text = typed?.Trim() ?? "";
        if (text.Length > longest || text.Any(char.IsControl))
            throw Refuse(text.Length > longest ? $"{text.Length} letters" : text, what,
                string.Create(CultureInfo.InvariantCulture, $"one line of at most {longest} letters"));
        return text.Length == 0 ? null : text;
    }

    private static BenchFaultException Refuse(string? typed, string what, string expected) => new(
        BenchFault.BadFile, $"{what}: {(string.IsNullOrWhiteSpace(typed) ? "nothing" : $"\"{typed.Trim()}\"")}",
            expected, "correct this field; nothing was changed");
}
