using AutoSweep.Core.Quantities;
using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Drivers.Tests;

/// <summary>What every driver folder must do; there is no code for a single one.</summary>
public sealed class EveryDriverTests
{
    [Fact]
    public void There_is_a_driver() => Assert.NotEmpty(DriverLibrary.BesideProgram.Names);

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void The_file_keeps_to_the_schema_and_bears_its_folders_name(string driver) =>
        Assert.Equal(driver, DriverLibrary.BesideProgram.Read(driver).Name);

    [Theory]
    [MemberData(nameof(DriverFolders.Sessions), MemberType = typeof(DriverFolders))]
    public async Task A_recorded_session_replays_line_for_line(string driver, string session)
    {
        var steps = SessionFile.Read(Path.Combine(DriverFolders.FolderOf(driver), "sessions", session));
        Assert.NotEmpty(steps);
        await using var replay = new SessionReplay(DriverLibrary.BesideProgram.Read(driver));
        await replay.PlayAsync(steps);
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void The_sessions_show_an_overload_and_a_value_of_everything_that_the_driver_measures(string driver)
    {
        var sessions = Directory.EnumerateFiles(Path.Combine(DriverFolders.FolderOf(driver), "sessions"), "*.txt");
        var steps = sessions.SelectMany(SessionFile.Read).ToArray();
        var read = DriverLibrary.BesideProgram.Read(driver);
        (bool Measures, string Call, string Outcome)[] wanted =
        [
            (read.Level is not null, "read", "value"), (read.Level is not null, "read", "overload"),
            (read.Frequency is not null, "count", "value"),
            (read.Capacitance is not null, "measure", "capacitance"), (read.Capacitance is not null, "measure", "overload"),
        ];
        Assert.All(wanted.Where(one => one.Measures), one => Assert.Contains(
            steps, step => step.Call[0] == one.Call && step.Outcome?.StartsWith(one.Outcome, StringComparison.Ordinal) == true));
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void Every_command_is_one_that_the_manual_has(string driver)
    {
        var headers = File.ReadLines(Path.Combine(DriverFolders.FolderOf(driver), "commands.txt"))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => new ScpiHeader(line))
            .ToArray();
        Assert.All(SentBy(DriverLibrary.BesideProgram.Read(driver)), command =>
            Assert.True(headers.Any(header => header.Matches(command.Split(' ')[0])), $"{command} is in no line of commands.txt"));
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public async Task What_the_error_queue_held_from_before_is_read_out_at_the_start(string driver)
    {
        var read = DriverLibrary.BesideProgram.Read(driver);
        await using var link = new TalkingMeter(read) { Errors = ["-222,\"Data out of range\"", "-410,\"Query INTERRUPTED\""] };
        await using var session = new ScpiSession(link, MeterSessionOptions.Of(read, new() { QueryTimeout = TimeSpan.FromHours(2) }),
            new InstantTime(), NullLogger.Instance);
        await using IAsyncDisposable meter = read.Level is not null
            ? await ScpiLevelMeter.OpenAsync(session, read, new InstantTime(), NullLogger.Instance, default)
            : await ScpiCapacitanceMeter.OpenAsync(session, read, Capacitance.Zero, new InstantTime(), NullLogger.Instance, default);
        Assert.Empty(link.Errors);
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void The_page_on_drivers_lists_it_with_the_figures_of_its_file(string driver)
    {
        var page = File.ReadLines(DriverFolders.InRepository("docs/drivers.md"));
        var row = page.Single(line => line.StartsWith($"| `{driver}` |", StringComparison.Ordinal));
        var read = DriverLibrary.BesideProgram.Read(driver);
        Assert.All(read.Level?.Bandwidths ?? [], bandwidth =>
            Assert.Contains(FormattableString.Invariant($"{bandwidth.SettleSeconds} s ({bandwidth.Hertz} Hz)"), row,
                StringComparison.Ordinal));
        if (read.Capacitance is { Accuracy: var accuracy })
            Assert.Contains(FormattableString.Invariant($"{100 * accuracy.ShareOfReading:0.###} % + {accuracy.OffsetPicofarads} pF"), row,
                StringComparison.Ordinal);
    }

    [Fact]
    public void The_schema_in_the_folder_is_the_one_that_the_types_make()
    {
        var file = DriverFolders.InRepository("drivers/driver.schema.json");
        var made = Path.Combine(AppContext.BaseDirectory, "driver.schema.json");
        File.WriteAllText(made, DriverSchema.Text);
        Assert.True(
            File.Exists(file) && File.ReadAllText(file) == DriverSchema.Text, $"The schema changed; if that is meant: cp {made} {file}");
    }

    private static IEnumerable<string> SentBy(MeterDriver driver) =>
        [.. driver.Commands().Select(command => command.Text), .. driver.ErrorQuery is { } query ? [query] : Array.Empty<string>()];
}
