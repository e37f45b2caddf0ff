using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Page.Shared;

/// <summary>Reads what a person typed into a field of a page.</summary>
public static class FormField
{
    /// <summary>A text; none where the field is empty.</summary>
    public static string? Text(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();

    /// <summary>A number; none where the field is empty.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="field">The field's label, for the message.</param>
    /// <param name="least">The least that it may be.</param>
    /// <param name="most">The most that it may be.</param>
    /// <exception cref="BenchFaultException">No number, or out of range.</exception>
    public static double? Number(string? typed, string field, double least, double most)
    {
        if (Text(typed) is not { } text)
            return null;
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most
            ? value
            : throw Fault(text, field, FormattableString.Invariant($"a number from {least} to {most}, with a point as decimal mark"));
    }

    /// <summary>A whole number; none where the field is empty.</summary>
    /// <exception cref="BenchFaultException">No whole number, or out of range.</exception>
    public static int? Whole(string? typed, string field, int least, int most)
    {
        if (Text(typed) is not { } text)
            return null;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most
            ? value
            : throw Fault(text, field, FormattableString.Invariant($"a whole number from {least} to {most}"));
    }

    /// <summary>A capacitance; none where the field is empty.</summary>
    /// <exception cref="BenchFaultException">No capacitance, or none from 1 pF to 1 mF.</exception>
    public static Capacitance? Capacitance(string? typed, string field)
    {
        if (Text(typed) is not { } text)
            return null;
        return TypedCapacitance.Picofarads(text) is >= 1 and <= 1e9 and var picofarads
            ? Core.Quantities.Capacitance.FromPicofarads(picofarads)
            : throw Fault(text, field, TypedCapacitance.Expected);
    }

    /// <summary>A number as a field shows it.</summary>
    public static string Of(double? value) => value?.ToString("0.#########", CultureInfo.InvariantCulture) ?? "";

    /// <summary>The fault of a field.</summary>
    public static BenchFaultException Fault(string found, string field, string expected) =>
        new(BenchFault.BadFile, $"\"{found}\" in the field {field}", expected, "Type it again; nothing was changed.");
}
