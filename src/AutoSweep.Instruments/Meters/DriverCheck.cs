using System.Text.RegularExpressions;
using AutoSweep.Core.StrictJson;
using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Instruments.Meters;

/// <summary>What a driver file must keep to beyond its schema.</summary>
internal static partial class DriverCheck
{
    private static readonly string[] Placeholders = ["{range}", "{bandwidth}", "{aperture}"];

    /// <summary>Every fault of a driver whose fields, taken one by one, are in order.</summary>
    public static IEnumerable<JsonFieldFault> Of(MeterDriver driver, string? folder) =>
        [.. Names(driver, folder), .. AllCommands(driver).SelectMany(Command), .. Level(driver.Level)];

    private static IEnumerable<JsonFieldFault> Names(MeterDriver driver, string? folder)
    {
        if (driver.Name != folder)
            yield return new("name", $"\"{driver.Name}\"", $"the folder's name, \"{folder}\"", "Give both the same name.");
        if (driver.Identity.Count == 0)
            yield return new("identity", "an empty list", "at least one pattern",
                "For any meter write [ { \"maker\": \"*\", \"model\": \"*\" } ].");
    }

    private static IEnumerable<JsonFieldFault> Command((string Path, string Text) command)
    {
        if (string.IsNullOrWhiteSpace(command.Text) || command.Text.Any(letter => letter is < ' ' or > '~'))
            yield return new(command.Path, $"\"{command.Text}\"", "one line of printable ASCII", "Correct the command.");
        else if (Placeholder().Matches(command.Text).FirstOrDefault(match => !Placeholders.Contains(match.Value)) is { } unknown)
            yield return new(command.Path, unknown.Value, $"one of {string.Join(", ", Placeholders)}", "Correct what stands in braces.");
    }

    private static IEnumerable<(string Path, string Text)> AllCommands(MeterDriver driver) =>
    [
        .. Listed(Field("link", "serialSetUp"), driver.Link.SerialSetUp),
        .. Listed("setUp", driver.SetUp),
        .. Listed(Field("level", "setUp"), driver.Level.SetUp),
        (Field("level", "read"), driver.Level.Read),
        .. Listed(Field("frequency", "setUp"), driver.Frequency.SetUp),
        (Field("frequency", "read"), driver.Frequency.Read),
        .. driver.TearDown.Select((command, index) => (Item("tearDown", index), command)),
        .. driver.Beep is { } beep ? [(Field("beep", "command"), beep.Command)] : Array.Empty<(string, string)>(),
    ];

    private static IEnumerable<(string Path, string Text)> Listed(string path, IEnumerable<DriverCommand> commands) =>
        commands.Select((command, index) => (Field(Item(path, index), "command"), command.Command));

    private static IEnumerable<JsonFieldFault> Level(DriverLevel level)
    {
        if (!Ascends(level.RangesVolts))
            yield return new(Field("level", "rangesVolts"), "this list", "at least one range, above 0 V, in ascending order",
                "Sort the list.");
        if (!Ascends([.. level.Bandwidths.Select(bandwidth => bandwidth.Hertz)])
            || !Ascends([.. level.Bandwidths.Select(bandwidth => bandwidth.FromToneHertz)]))
            yield return new(Field("level", "bandwidths"), "this list",
                "at least one bandwidth, hertz and fromToneHertz in ascending order", "Sort the list.");
        foreach (var (index, _) in level.Bandwidths.Index().Where(bandwidth => string.IsNullOrWhiteSpace(bandwidth.Item.Source)))
            yield return new(Field(Item(Field("level", "bandwidths"), index), "source"), "an empty text",
                "where the settling time is published", "Name the page or the measurement.");
    }

    private static bool Ascends(IReadOnlyList<double> values) =>
        values.Count > 0 && values[0] > 0 && values.Zip(values.Skip(1)).All(pair => pair.First < pair.Second);

    [GeneratedRegex(@"\{[^}]*\}?")]
    private static partial Regex Placeholder();
}
