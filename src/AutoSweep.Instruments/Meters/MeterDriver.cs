using System.ComponentModel;
using System.Text.Json.Serialization;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Instruments.Meters;

/// <summary>All that is particular to a family of meters, as data: a driver folder's <c>driver.json</c>.</summary>
/// <remarks>No conditions, loops or expressions (docs/drivers.md). In commands, <c>{range}</c> stands for the range in volts,
/// <c>{bandwidth}</c> for the detector bandwidth in hertz, <c>{aperture}</c> for the counter's gate in seconds and
/// <c>{frequency}</c> for the test frequency of a capacitance in hertz.</remarks>
public sealed record MeterDriver
{
    /// <summary>Where the schema is, for editors; not read.</summary>
    [JsonPropertyName("$schema")]
    public string? Schema { get; init; }

    /// <summary>The driver's name: that of its folder.</summary>
    [Description("The driver's name: that of its folder.")]
    public required string Name { get; init; }

    /// <summary>What it drives, in a few words.</summary>
    [Description("What it drives, in a few words.")]
    public required string Title { get; init; }

    /// <summary>Which answers to <c>*IDN?</c> it drives; one must match.</summary>
    [Description("Which answers to *IDN? it drives; one must match.")]
    public required IReadOnlyList<DriverIdentity> Identity { get; init; }

    /// <summary>How its wire behaves.</summary>
    [Description("How its wire behaves.")]
    public required DriverLink Link { get; init; }

    /// <summary>Commands sent once, after the identity is known.</summary>
    [Description("Commands sent once, after the identity is known.")]
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>How it reads the AC level.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("How it reads the AC level. Default null: it cannot.")]
    public DriverLevel? Level { get; init; }

    /// <summary>How it counts the frequency.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("How it counts the frequency. Default null: it cannot.")]
    public DriverFrequency? Frequency { get; init; }

    /// <summary>How it measures a capacitance.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("How it measures a capacitance. Default null: it cannot.")]
    public DriverCapacitance? Capacitance { get; init; }

    /// <summary>How it writes its readings.</summary>
    [Description("How it writes its readings.")]
    public DriverReply Reply { get; init; } = new();

    /// <summary>The query that reads one entry of its error queue; <c>*ESR?</c> for a meter that has the event register of IEEE 488.2, 11.5.1
    /// alone.</summary>
    /// <value>Default <c>SYST:ERR?</c>; null for a meter with neither: then nothing counts as refused.</value>
    [Description("The query that reads one entry of its error queue; *ESR? for a meter that has the event register of IEEE 488.2, 11.5.1 alone. "
        + "Default SYST:ERR?; null for a meter with neither: then nothing counts as refused.")]
    public string? ErrorQuery { get; init; } = "SYST:ERR?";

    /// <summary>Lets it beep.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("Lets it beep. Default null: it cannot.")]
    public DriverCommand? Beep { get; init; }

    /// <summary>Shows a text on its display; holds <c>{text}</c>, 30 characters at most.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("Shows a text on its display; holds {text}, 30 characters at most. Default null: it cannot.")]
    public DriverCommand? Display { get; init; }

    /// <summary>Commands sent before the link is closed, such as the one that gives the front panel back. All optional.</summary>
    [Description("Commands sent before the link is closed, such as the one that gives the front panel back. All optional.")]
    public IReadOnlyList<string> TearDown { get; init; } = [];

    /// <summary>The real meters that this file was tried on, each with its model, firmware and date.</summary>
    /// <value>Default empty: none yet.</value>
    [Description("The real meters that this file was tried on, each with its model, firmware and date. Default empty: none yet.")]
    public IReadOnlyList<string> TriedOn { get; init; } = [];

    /// <summary>What a person should know about this family, each with its source.</summary>
    [Description("What a person should know about this family, each with its source.")]
    public IReadOnlyList<string> Quirks { get; init; } = [];

    /// <summary>Reads and checks a driver file.</summary>
    /// <exception cref="Core.BenchFaultException">Not in the format; names the field and the line.</exception>
    public static MeterDriver Read(string path)
    {
        var file = StrictJsonFile.Read<MeterDriver>(path);
        var folder = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path)));
        return DriverCheck.Of(file.Value, folder).FirstOrDefault() is { } fault ? throw file.Fault(fault) : file.Value;
    }

    /// <summary>Whether a meter with this identity is one that the driver drives.</summary>
    public bool Drives(InstrumentIdentity identity) => Identity.Any(pattern => pattern.Matches(identity));

    /// <summary>The fault of a stage that needs what this family does not do.</summary>
    /// <param name="section">The section that its file would need.</param>
    /// <param name="does">What it does not do, such as "reads no level".</param>
    internal Core.BenchFaultException Lacks(string section, string does) => new(
        Core.BenchFault.BadFile,
        $"the driver {Name} ({Title}) {does}",
        $"a driver whose driver.json has the section \"{section}\"",
        "Choose another meter and driver for this; drivers/README.md lists what each driver does.");
}
