using AutoSweep.Instruments.Meters;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>The table of all drivers in drivers/README.md, made from their files.</summary>
internal static class DriverTable
{
    private static readonly string[] Head =
        ["Driver", "For", "AC ranges", "Settling (bandwidth)", "Level", "Count", "Capacitance", "Person", "Wire", "Errors", "Real meters"];

    public static string Of(DriverLibrary library) => string.Concat(
        ((IEnumerable<string[]>)[Head, [.. Head.Select(_ => "---")], .. library.Names.Select(library.Read).Select(Row)])
            .Select(row => $"| {string.Join(" | ", row)} |\n"));

    private static string[] Row(MeterDriver driver) =>
    [
        $"[`{driver.Name}`]({driver.Name}/README.md)", driver.Title, Ranges(driver.Level), Settling(driver.Level), Accuracy(driver.Level?.Accuracy),
        driver.Frequency is { } frequency ? FormattableString.Invariant($"{frequency.ApertureSeconds} s gate") : "no", Capacitance(driver.Capacitance),
        Person(driver), Wire(driver.Link), driver.ErrorQuery is { } query ? $"`{query}`" : "none",
        driver.TriedOn.Count == 0 ? "none yet" : string.Join("; ", driver.TriedOn),
    ];

    private static string Ranges(DriverLevel? level) =>
        level is null ? "reads no level" : $"{string.Join(", ", level.RangesVolts.Select(Figure))} V";

    private static string Settling(DriverLevel? level) => level is null ? "-"
        : !level.SetUp.Any(command => command.Command.Contains("{bandwidth}", StringComparison.Ordinal))
            ? FormattableString.Invariant($"{level.SettleWithoutBandwidthSeconds} s ({level.Bandwidths[0].Hertz} Hz, fixed)")
            : string.Join(", ", level.Bandwidths.Select(one => FormattableString.Invariant($"{one.SettleSeconds} s ({one.Hertz} Hz)")));

    private static string Accuracy(DriverLevelAccuracy? accuracy) => accuracy is null ? "-"
        : $"{Percent(accuracy.ShareOfReading)} + {Percent(accuracy.ShareOfRange)} of range; under {Percent(accuracy.HoldsFromShareOfRange)} of range "
            + $"{Percent(accuracy.BelowAddShareOfRange)} of it more"
            + (accuracy.FromToneHertz > 0 ? FormattableString.Invariant($"; from {accuracy.FromToneHertz} Hz") : "");

    private static string Capacitance(DriverCapacitance? capacitance) => capacitance is null ? "no"
        : $"{(capacitance.Reply.DissipationField is null ? "C alone" : FormattableString.Invariant($"Cp and D at {capacitance.TestHertz} Hz"))}: "
            + FormattableString.Invariant($"{Percent(capacitance.Accuracy.ShareOfReading)} + {capacitance.Accuracy.OffsetPicofarads} pF");

    private static string Person(MeterDriver driver) => (driver.Beep, driver.Display) switch
    {
        (null, null) => "-",
        (_, null) => "beep",
        (null, _) => "text",
        _ => "beep, text",
    };

    private static string Wire(DriverLink link)
    {
        var ends = link.Terminator == link.ReplyTerminator ? Word(link.Terminator) : $"{Word(link.Terminator)}, replies {Word(link.ReplyTerminator)}";
        var serial = FormattableString.Invariant(
            $"{link.Serial.Baud} {link.Serial.DataBits}{link.Serial.Parity.ToString()[0]}{link.Serial.StopBits}");
        return $"{ends}; {serial}{(link.PauseSeconds > 0 ? FormattableString.Invariant($"; {link.PauseSeconds} s pause") : "")}";
    }

    private static string Word(DriverTerminator terminator) => terminator == DriverTerminator.CrLf ? "CR LF" : terminator.ToString().ToUpperInvariant();

    private static string Percent(double share) => FormattableString.Invariant($"{100 * share:0.###} %");

    private static string Figure(double value) => FormattableString.Invariant($"{value}");
}
