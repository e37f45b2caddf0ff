using AutoSweep.Core.StrictJson;
using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>Slips of unit in a driver file: millivolts for volts, milliseconds for seconds, a suffix behind a filled-in number.</summary>
/// <remarks>A driver file has SI units throughout; the field's name says which.</remarks>
internal static class DriverUnits
{
    // Bench multimeters read 750 V or 1000 V AC at most and have a lowest range of 60 mV to 0.6 V (makers' data sheets, from memory).
    private const double HighestRangeVolts = 1000;
    private const double LowestRangeVolts = 10;

    private static readonly Dictionary<string, string> Suffixes =
        new() { ["{range}"] = "V", ["{bandwidth}"] = "HZ", ["{aperture}"] = "S", ["{frequency}"] = "HZ" };

    /// <summary>Every slip that can be told.</summary>
    public static IEnumerable<JsonFieldFault> Of(MeterDriver driver) =>
        [.. driver.Level is { } level ? [.. Ranges(level), .. Bandwidths(level)] : Array.Empty<JsonFieldFault>(),
            .. driver.Commands().SelectMany(Suffix), .. driver.Commands().SelectMany(command => Unfilled(driver, command))];

    private static IEnumerable<JsonFieldFault> Ranges(DriverLevel level)
    {
        var path = Field("level", "rangesVolts");
        if (level.RangesVolts.Count > 0 && level.RangesVolts[0] > LowestRangeVolts)
            yield return new(path, FormattableString.Invariant($"a lowest range of {level.RangesVolts[0]} V"),
                FormattableString.Invariant($"{LowestRangeVolts} V or less"), "Write the ranges in volts, not in millivolts.");
        if (level.RangesVolts.Count > 0 && level.RangesVolts[^1] > HighestRangeVolts)
            yield return new(path, FormattableString.Invariant($"a range of {level.RangesVolts[^1]} V"),
                FormattableString.Invariant($"{HighestRangeVolts} V or less"), "Write the ranges in volts, not in millivolts.");
    }

    // A detector that passes a frequency averages over at least one of its periods.
    private static IEnumerable<JsonFieldFault> Bandwidths(DriverLevel level)
    {
        foreach (var (index, bandwidth) in level.Bandwidths.Index())
        {
            var path = Item(Field("level", "bandwidths"), index);
            if (bandwidth.SettleSeconds * bandwidth.Hertz < 1)
                yield return new(Field(path, "settleSeconds"), FormattableString.Invariant($"{bandwidth.SettleSeconds} s"),
                    FormattableString.Invariant($"at least {1 / bandwidth.Hertz:0.####} s, one period of {bandwidth.Hertz} Hz"),
                    "Write the settling time in seconds, the bandwidth in hertz.");
            if (bandwidth.FromToneHertz < bandwidth.Hertz)
                yield return new(Field(path, "fromToneHertz"), FormattableString.Invariant($"{bandwidth.FromToneHertz} Hz"),
                    FormattableString.Invariant($"{bandwidth.Hertz} Hz or more, what the filter passes"), "Write both in hertz.");
        }
    }

    private static IEnumerable<JsonFieldFault> Suffix((string Path, string Text) command) =>
        from filled in Suffixes
        let at = command.Text.IndexOf(filled.Key, StringComparison.Ordinal)
        where at >= 0
        let behind = new string([.. command.Text[(at + filled.Key.Length)..].TrimStart(' ').TakeWhile(char.IsAsciiLetter)])
        where behind.Length > 0 && !behind.Equals(filled.Value, StringComparison.OrdinalIgnoreCase)
        select new JsonFieldFault(command.Path, $"the unit {behind} behind {filled.Key}", $"no unit, or {filled.Value}",
            "What is filled in is in volts, hertz or seconds; MHZ is megahertz and MS is milliseconds (SCPI-1999, 7.1).");

    private static IEnumerable<JsonFieldFault> Unfilled(MeterDriver driver, (string Path, string Text) command)
    {
        string[] filled = command.Path.Split('.', '[')[0] switch
        {
            "display" => ["{text}"],
            "capacitance" => ["{frequency}"],
            "level" or "frequency" => ["{range}", "{bandwidth}", "{aperture}"],
            "tearDown" or "beep" => [],
            _ when driver.Capacitance is null => ["{range}", "{bandwidth}", "{aperture}"],
            _ when driver.Level is null => ["{frequency}"],
            _ => [],
        };
        foreach (var unfilled in Suffixes.Keys.Append("{text}").Where(one => command.Text.Contains(one, StringComparison.Ordinal)).Except(filled))
            yield return new(command.Path, $"{unfilled}, which nothing fills in here",
                filled.Length == 0 ? "a command without braces" : $"at most {string.Join(", ", filled)}", "Write the number itself.");
    }
}
