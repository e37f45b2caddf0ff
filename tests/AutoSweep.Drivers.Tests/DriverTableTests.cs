using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Drivers.Tests;

/// <summary>drivers/README.md lists the drivers as their files have them; AUTOSWEEP_ACCEPT=1 writes its table anew.</summary>
public sealed class DriverTableTests
{
    private const string Begin = "<!-- drivers:";
    private const string End = "<!-- /drivers -->";

    [Fact]
    public void The_table_of_drivers_is_what_their_files_say()
    {
        var page = DriverFolders.InRepository("drivers/README.md");
        var text = File.ReadAllText(page);
        var start = text.IndexOf("-->\n", text.IndexOf(Begin, StringComparison.Ordinal), StringComparison.Ordinal) + 4;
        var end = text.IndexOf(End, StringComparison.Ordinal);
        var table = $"\n{DriverTable.Of(DriverLibrary.BesideProgram)}\n";
        if (Environment.GetEnvironmentVariable("AUTOSWEEP_ACCEPT") == "1")
            File.WriteAllText(page, text[..start] + table + text[end..]);
        else
            Assert.Equal(table, text[start..end]);
    }

    [Fact]
    public void Multimeters_and_capacitance_meters_of_many_dialects_are_there()
    {
        var drivers = DriverLibrary.BesideProgram.Names.Select(DriverLibrary.BesideProgram.Read).ToArray();
        Assert.InRange(Dialects(drivers.Where(driver => driver.Level is not null)), 8, int.MaxValue);
        Assert.InRange(Dialects(drivers.Where(driver => driver.Level is null)), 4, int.MaxValue);
    }

    // Two drivers whose commands, terminators and names for ranges are the same would be one driver.
    private static int Dialects(IEnumerable<MeterDriver> drivers) => drivers
        .Select(driver => string.Join('\n', (IEnumerable<string>)
        [
            .. driver.Commands().Select(command => command.Text), $"{driver.ErrorQuery} {driver.Link.Terminator} {driver.Link.ReplyTerminator}",
            .. driver.Level?.RangesVolts.Select(range => FormattableString.Invariant($"{range}")) ?? [],
        ]))
        .Distinct(StringComparer.Ordinal).Count();
}
