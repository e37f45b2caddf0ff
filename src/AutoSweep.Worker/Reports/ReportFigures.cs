using System.Globalization;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Reports;

/// <summary>The figures of a record as they are printed: in the bench's units, rounded to what their uncertainty justifies.</summary>
public static class ReportFigures
{
    /// <summary>What stands where nothing was measured.</summary>
    public const string None = "–";

    // 20 log10 e: a small share of a level in decibels.
    private const double DecibelsOfShare = 8.685889638;

    /// <summary>The minus sign, as wide as a plus (U+2212).</summary>
    public const string Minus = "\u2212";

    /// <summary>A capacitance in nanofarads: <c>104.57 ± 0.12</c>.</summary>
    /// <param name="picofarads">The value in picofarads.</param>
    /// <param name="standardUncertainty">Its standard uncertainty in picofarads, where it is known.</param>
    public static string Nanofarads(long? picofarads, double? standardUncertainty) => picofarads is { } value
        ? new UncertainFigure(value / 1000.0, (standardUncertainty ?? 0) / 1000).ToString() : None;

    /// <summary>A level in millivolts: <c>5.37 ± 0.16</c>.</summary>
    public static string Millivolts(ReportLevel? level) => level is null ? None
        : new UncertainFigure(level.Millivolts, level.RelativeUncertainty * level.Millivolts) { MostDecimals = 3 }.ToString();

    /// <summary>A level in millivolts whose uncertainty is given in decibels, without it: <c>5.37</c>.</summary>
    /// <param name="millivolts">The level in millivolts.</param>
    /// <param name="standardUncertainty">The standard uncertainty in decibels.</param>
    public static string Millivolts(double? millivolts, double standardUncertainty) => millivolts is { } level
        ? new UncertainFigure(level, level * standardUncertainty / DecibelsOfShare) { MostDecimals = 3 }.ValueText : None;

    /// <summary>A deviation in decibels with its sign: <c>+0.31</c>.</summary>
    public static string Decibels(ReportLevel? level) =>
        level is { Decibels: { } off } ? Decibels(off, level.ExpandedUncertaintyDecibels / UncertainFigure.CoverageFactor) : None;

    /// <summary>A difference in decibels with its sign.</summary>
    /// <param name="decibels">The value in decibels.</param>
    /// <param name="standardUncertainty">Its standard uncertainty in decibels.</param>
    public static string Decibels(double? decibels, double standardUncertainty)
    {
        if (decibels is not { } value)
            return None;
        // Hundredths of a decibel are the least that anybody speaks of.
        var places = Math.Clamp(new UncertainFigure(value, standardUncertainty).LastPlace, 0, 2);
        var rounded = Math.Round(value, places, MidpointRounding.AwayFromZero);
        var digits = Math.Abs(rounded).ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return rounded switch { 0 => digits, > 0 => "+" + digits, _ => Minus + digits };
    }

    /// <summary>A plain number; a dash where there is none.</summary>
    public static string Number(double? value, string format) =>
        value is { } number && double.IsFinite(number) ? number.ToString(format, CultureInfo.InvariantCulture) : None;

    /// <summary>A day: <c>2026-03-01</c> (ISO 8601), which no reader takes for another.</summary>
    public static string Day(DateTimeOffset? at) => at?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? None;

    /// <summary>A day.</summary>
    public static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "not stated";

    /// <summary>A day and minute with its offset from UTC.</summary>
    public static string Minute(DateTimeOffset at) =>
        at.ToString("yyyy-MM-dd HH:mm K", CultureInfo.InvariantCulture).Replace("+00:00", "UTC", StringComparison.Ordinal);

    /// <summary>Journal entries: <c>12 · 601</c>.</summary>
    public static string Entries(params long?[] entries) => string.Join(" · ", entries.OfType<long>().Distinct().Order());

    /// <summary>A filter's kind.</summary>
    public static string Filter(FilterKind kind) => kind switch
    {
        FilterKind.None => "none",
        FilterKind.Transformer => "transformer",
        FilterKind.TunedLc => "tuned",
        _ => "tuned, retrofit",
    };
}
