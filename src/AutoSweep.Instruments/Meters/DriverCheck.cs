using System.Text.RegularExpressions;
using AutoSweep.Core.StrictJson;
using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Instruments.Meters;

/// <summary>What a driver file must keep to beyond its schema.</summary>
internal static partial class DriverCheck
{
    private static readonly string[] Placeholders = ["{range}", "{bandwidth}", "{aperture}", "{frequency}", "{text}"];

    /// <summary>Every fault of a driver whose fields, taken one by one, are in order.</summary>
    public static IEnumerable<JsonFieldFault> Of(MeterDriver driver, string? folder) =>
        
    [
        .. Names(driver, folder), .. Functions(driver), .. driver.Commands().SelectMany(Command),
        .. driver.Level is { } level ? Level(level) : [], .. driver.Capacitance is { } capacitance ? Capacitance(capacitance) : [],
    ];

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

    private static IEnumerable<JsonFieldFault> Functions(MeterDriver driver)
    {
        if (driver.Level is null && driver.Frequency is null && driver.Capacitance is null)
            yield return new(
                "level", "none of level, frequency and capacitance", "at least one of them", "Write what the meters can measure.");
    }

    private static IEnumerable<JsonFieldFault> Capacitance(DriverCapacitance capacitance)
    {
        if (string.IsNullOrWhiteSpace(capacitance.Accuracy.Source))
            yield return new(Field(Field("capacitance", "accuracy"), "source"), "an empty text", "where the accuracy is published",
                "Name the page or the data sheet.");
        int?[] fields = [capacitance.Reply.CapacitanceField, capacitance.Reply.DissipationField, capacitance.Reply.StatusField];
        if (fields.OfType<int>().Distinct().Count() < fields.OfType<int>().Count())
            yield return new(Field("capacitance", "reply"), "one field with two meanings", "a field of its own for each",
                "Count the reply's fields from 1.");
    }

    private static IEnumerable<JsonFieldFault> Level(DriverLevel level)
    {
        if (!Ascends(level.RangesVolts))
            yield return new(Field("level", "rangesVolts"), "this list", "at least one range, above 0 V, in ascending order",
                "Sort the list.");
        if (level.RangeArguments.Count is not 0 and var arguments && arguments != level.RangesVolts.Count)
            yield return new(Field("level", "rangeArguments"), $"{arguments} names for {level.RangesVolts.Count} ranges", "one name for each range",
                "Write the names in the order of rangesVolts.");
        if (!Ascends([.. level.Bandwidths.Select(bandwidth => bandwidth.Hertz)])
            || !Ascends([.. level.Bandwidths.Select(bandwidth => bandwidth.FromToneHertz)]))
            yield return new(Field("level", "bandwidths"), "this list",
                "at least one bandwidth, hertz and fromToneHertz in ascending order", "Sort the list.");
        if (level.Burst is { } burst && string.IsNullOrWhiteSpace(burst.Source))
            yield return new(Field(Field("level", "burst"), "source"), "an empty text", "where its figures are published", "Name the page or the measurement.");
        if (level.RangeArguments.Any(IsNoWord) || level.RangeArguments.Distinct(StringComparer.Ordinal).Count() < level.RangeArguments.Count)
            yield return new(Field("level", "rangeArguments"), "an empty name, the same name twice, or more than printable ASCII",
                "a word for each range, none twice", "Write the names as the manual has them.");
        foreach (var (index, _) in level.Bandwidths.Index().Where(bandwidth => bandwidth.Item.Argument is { } argument && IsNoWord(argument)))
            yield return new(Field(Item(Field("level", "bandwidths"), index), "argument"), "an empty name, or more than printable ASCII",
                "a word such as S", "Write the name as the manual has it, or delete the field where the command takes hertz.");
        foreach (var (index, _) in level.Bandwidths.Index().Where(bandwidth => string.IsNullOrWhiteSpace(bandwidth.Item.Source)))
            yield return new(Field(Item(Field("level", "bandwidths"), index), "source"), "an empty text",
                "where the settling time is published", "Name the page or the measurement.");
    }

    // It goes into a command, which must stay one line.
    private static bool IsNoWord(string text) => text.Length == 0 || text.Any(letter => letter is <= ' ' or > '~');

    private static bool Ascends(IReadOnlyList<double> values) =>
        values.Count > 0 && values[0] > 0 && values.Zip(values.Skip(1)).All(pair => pair.First < pair.Second);

    [GeneratedRegex(@"\{[^}]*\}?")]
    private static partial Regex Placeholder();
}
