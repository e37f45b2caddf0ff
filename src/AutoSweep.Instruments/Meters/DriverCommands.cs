using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Instruments.Meters;

/// <summary>Everything that a driver sends.</summary>
public static class DriverCommands
{
    /// <summary>The commands and queries of a driver, each with the path of its field.</summary>
    public static IEnumerable<(string Path, string Text)> Commands(this MeterDriver driver) =>
    [
        .. Listed(Field("link", "serialSetUp"), driver.Link.SerialSetUp),
        .. Listed("setUp", driver.SetUp),
        .. Of("level", driver.Level?.SetUp, driver.Level?.Read),
        .. Of(Field("level", "burst"), driver.Level?.Burst?.SetUp, driver.Level?.Burst?.Read),
        .. Of("frequency", driver.Frequency?.SetUp, driver.Frequency?.Read),
        .. Of("capacitance", driver.Capacitance?.SetUp, driver.Capacitance?.Read),
        .. driver.Capacitance?.Trigger is { } trigger ? [(Field("capacitance", "trigger"), trigger)] : Array.Empty<(string, string)>(),
        .. driver.TearDown.Select((command, index) => (Item("tearDown", index), command)),
        .. driver.Beep is { } beep ? [(Field("beep", "command"), beep.Command)] : Array.Empty<(string, string)>(),
        .. driver.Display is { } display ? [(Field("display", "command"), display.Command)] : Array.Empty<(string, string)>(),
    ];

    /// <summary>The messages of a driver that are answered by a reading.</summary>
    public static IEnumerable<string> Queries(this MeterDriver driver) =>
        driver.Commands().Where(command => command.Path.EndsWith(".read", StringComparison.Ordinal)).Select(command => command.Text);

    private static IEnumerable<(string Path, string Text)> Of(string section, IEnumerable<DriverCommand>? setUp, string? read) =>
        setUp is null || read is null ? [] : [.. Listed(Field(section, "setUp"), setUp), (Field(section, "read"), read)];

    private static IEnumerable<(string Path, string Text)> Listed(string path, IEnumerable<DriverCommand> commands) =>
        commands.Select((command, index) => (Field(Item(path, index), "command"), command.Command));
}
