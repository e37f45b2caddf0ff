using System.Text.RegularExpressions;

namespace AutoSweep.Instruments.Meters;

/// <summary>What a driver file must keep to beyond its schema.</summary>
internal static partial class DriverCheck
{
    private static readonly string[] Placeholders = ["{range}", "{bandwidth}", "{aperture}"];

    /// <summary>The first thing that is wrong, or null.</summary>
    public static DriverProblem? FirstProblem(MeterDriver driver) => Problems(driver).FirstOrDefault();

    private static IEnumerable<DriverProblem> Problems(MeterDriver driver) =>
        [.. Identities(driver), .. Commands(driver), .. Level(driver.Level), .. Seconds(driver), .. Reply(driver.Reply)];

    private static IEnumerable<DriverProblem> Identities(MeterDriver driver)
    {
        if (driver.Identity.Count == 0)
            yield return new("identity is empty", "at least one pattern; {\"maker\": \"*\", \"model\": \"*\"} for any meter");
    }

    private static IEnumerable<DriverProblem> Commands(MeterDriver driver)
    {
        foreach (var command in AllCommands(driver))
        {
            if (string.IsNullOrWhiteSpace(command) || command.Any(letter => letter is < ' ' or > '~'))
                yield return new($"the command \"{command}\"", "one line of printable ASCII");
            else if (Placeholder().Matches(command).FirstOrDefault(match => !Placeholders.Contains(match.Value)) is { } unknown)
                yield return new($"the command \"{command}\" with {unknown.Value}", $"only {string.Join(", ", Placeholders)}");
        }
    }

    private static IEnumerable<string> AllCommands(MeterDriver driver) =>
    [
        .. driver.Link.SerialSetUp.Concat(driver.SetUp).Concat(driver.Level.SetUp).Concat(driver.Frequency.SetUp).Select(command => command.Command),
        driver.Level.Read,
        driver.Frequency.Read,
        .. driver.TearDown,
        .. (string[])(driver.Beep is null ? [] : [driver.Beep.Command]),
    ];

    private static IEnumerable<DriverProblem> Level(DriverLevel level)
    {
        if (!Ascends(level.RangesVolts))
            yield return new("level.rangesVolts", "at least one range, above 0, in ascending order");
        if (level.OverRange is < 1 or > 2)
            yield return new(FormattableString.Invariant($"level.overRange {level.OverRange}"), "a factor from 1 to 2");
        if (!Ascends([.. level.Bandwidths.Select(bandwidth => bandwidth.Hertz)]))
            yield return new("level.bandwidths", "at least one bandwidth, above 0 Hz, in ascending order");
        if (level.Bandwidths.Any(bandwidth => string.IsNullOrWhiteSpace(bandwidth.Source)))
            yield return new("level.bandwidths with an empty source", "where each settling time is published");
    }

    private static IEnumerable<DriverProblem> Seconds(MeterDriver driver)
    {
        (string Field, double Value)[] fields =
        [
            ("link.openSettleSeconds", driver.Link.OpenSettleSeconds),
            ("link.queryTimeoutSeconds", driver.Link.QueryTimeoutSeconds),
            ("level.settleWithoutBandwidthSeconds", driver.Level.SettleWithoutBandwidthSeconds),
            ("frequency.apertureSeconds", driver.Frequency.ApertureSeconds),
            ("frequency.settleSeconds", driver.Frequency.SettleSeconds),
            .. driver.Level.Bandwidths.Select(bandwidth => ("level.bandwidths.settleSeconds", bandwidth.SettleSeconds)),
        ];
        return fields
            .Where(field => field.Value is not (>= 0 and <= 60))
            .Select(field => new DriverProblem(FormattableString.Invariant($"{field.Field} {field.Value}"), "seconds from 0 to 60"));
    }

    private static IEnumerable<DriverProblem> Reply(DriverReply reply)
    {
        if (reply.Field < 1)
            yield return new(FormattableString.Invariant($"reply.field {reply.Field}"), "1 or more");
    }

    private static bool Ascends(IReadOnlyList<double> values) =>
        values.Count > 0 && values[0] > 0 && values.Zip(values.Skip(1)).All(pair => pair.First < pair.Second);

    [GeneratedRegex(@"\{[^}]*\}?")]
    private static partial Regex Placeholder();
}
