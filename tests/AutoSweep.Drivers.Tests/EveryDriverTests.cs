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
    public void The_sessions_show_an_overload_and_a_count(string driver)
    {
        var sessions = Directory.EnumerateFiles(Path.Combine(DriverFolders.FolderOf(driver), "sessions"), "*.txt");
        var steps = sessions.SelectMany(SessionFile.Read).ToArray();
        Assert.Contains(steps, step => step.Call is ["read"] && step.Outcome == "overload");
        Assert.Contains(steps, step => step.Call is ["count"] && step.Outcome?.StartsWith("value", StringComparison.Ordinal) == true);
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void Every_command_is_one_that_the_manual_has(string driver)
    {
        var headers = File.ReadLines(Path.Combine(DriverFolders.FolderOf(driver), "commands.txt"))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => new ScpiHeader(line))
            .ToArray();
        Assert.All(CommandsOf(DriverLibrary.BesideProgram.Read(driver)), command =>
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
        await using var meter = await ScpiLevelMeter.OpenAsync(session, read, new InstantTime(), NullLogger.Instance, default);
        Assert.Empty(link.Errors);
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public void The_page_on_drivers_lists_it_with_the_settling_times_of_its_file(string driver)
    {
        var page = File.ReadLines(DriverFolders.InRepository("docs/drivers.md"));
        var row = page.Single(line => line.StartsWith($"| `{driver}` |", StringComparison.Ordinal));
        Assert.All(DriverLibrary.BesideProgram.Read(driver).Level.Bandwidths, bandwidth =>
            Assert.Contains(FormattableString.Invariant($"{bandwidth.SettleSeconds} s ({bandwidth.Hertz} Hz)"), row,
                StringComparison.Ordinal));
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

    private static IEnumerable<string> CommandsOf(MeterDriver driver) =>
    [
        .. from command in (DriverCommand[])[.. driver.Link.SerialSetUp, .. driver.SetUp, .. driver.Level.SetUp, .. driver.Frequency.SetUp]
           select command.Command,
        driver.Level.Read,
        driver.Frequency.Read,
        .. driver.TearDown,
        .. (string?[])[driver.ErrorQuery, driver.Beep?.Command] is var optional ? optional.OfType<string>() : [],
    ];
}
