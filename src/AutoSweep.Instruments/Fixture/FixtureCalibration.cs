using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Instruments.Fixture;

/// <summary>What a fixture's relays and its stray measured, one by one, with a capacitance meter: a strict JSON file.</summary>
public sealed record FixtureCalibration
{
    // 2 to the 20th combinations fill 12 MB and sort in a fraction of a second; a real box has 16 relays.
    internal const int MostRelays = 20;

    /// <summary>Where the schema is, for editors; not read.</summary>
    [JsonPropertyName("$schema")]
    public string? Schema { get; init; }

    /// <summary>The fixture's serial number, as its <c>*IDN?</c> gives it.</summary>
    [Description("The fixture's serial number, as its *IDN? gives it.")]
    public required string FixtureSerial { get; init; }

    /// <summary>What the open fixture measures at its clips, in picofarads: leads, clips and open contacts; 0 or more.</summary>
    [Description("What the open fixture measures at its clips, in picofarads: leads, clips and open contacts; 0 or more."), Range(0, 1e6)]
    public required double StrayPicofarads { get; init; }

    /// <summary>What each relay adds, in picofarads, relay 1 first; above 0.</summary>
    [Description("What each relay adds, in picofarads, relay 1 first; above 0.")]
    public required IReadOnlyList<double> RelaysPicofarads { get; init; }

    /// <summary>The day of the measurement.</summary>
    [Description("The day of the measurement.")]
    public DateOnly? Date { get; init; }

    /// <summary>The meter used, its serial number, its test frequency.</summary>
    [Description("The meter used, its serial number, its test frequency.")]
    public string? Meter { get; init; }

    /// <summary>The temperature in the box, in degrees Celsius.</summary>
    [Description("The temperature in the box, in degrees Celsius."), Range(-20, 70)]
    public double? TemperatureCelsius { get; init; }

    /// <summary>One standard uncertainty of the stray, in picofarads.</summary>
    [Description("One standard uncertainty of the stray, in picofarads."), Range(0, 1e6)]
    public double? StrayStandardUncertaintyPicofarads { get; init; }

    /// <summary>One standard uncertainty of each relay, in picofarads, relay 1 first.</summary>
    [Description("One standard uncertainty of each relay, in picofarads, relay 1 first.")]
    public IReadOnlyList<double>? RelayStandardUncertaintiesPicofarads { get; init; }

    /// <summary>Anything else worth knowing.</summary>
    [Description("Anything else worth knowing.")]
    public string? Note { get; init; }

    /// <summary>The stray, to the nearest picofarad.</summary>
    [JsonIgnore]
    public Capacitance Stray => Capacitance.FromPicofarads(StrayPicofarads);

    /// <summary>The relays, each to the nearest picofarad, relay 1 first.</summary>
    [JsonIgnore]
    public IReadOnlyList<Capacitance> Relays => [.. RelaysPicofarads.Select(Capacitance.FromPicofarads)];

    /// <summary>
    /// The standard uncertainty with every relay closed as a share of that total: the parts added as they are, an upper bound, because the
    /// meter's own error is common to all. None where the file does not say.
    /// </summary>
    [JsonIgnore]
    public double? RelativeStandardUncertainty => RelayStandardUncertaintiesPicofarads is { } relays
        ? (relays.Sum() + (StrayStandardUncertaintyPicofarads ?? 0)) / (RelaysPicofarads.Sum() + StrayPicofarads) : null;

    /// <summary>The schema that an editor uses for such a file.</summary>
    public static string SchemaText => JsonFieldSchema.Of<FixtureCalibration>("Calibration of a relay fixture");

    /// <summary>Reads and checks a calibration file.</summary>
    /// <exception cref="Core.BenchFaultException">Missing or not in the format; names the field, what was found and expected.</exception>
    public static FixtureCalibration Read(string path) => Checked(StrictJsonFile.Read<FixtureCalibration>(path));

    /// <summary>Checks a calibration file whose text is at hand.</summary>
    /// <param name="text">The JSON text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <exception cref="Core.BenchFaultException">It breaks the format, or one field contradicts another.</exception>
    public static FixtureCalibration Parse(string text, string name) => Checked(StrictJsonFile.Parse<FixtureCalibration>(text, name));

    private static FixtureCalibration Checked(CheckedJsonFile<FixtureCalibration> file) =>
        file.Value.Faults().FirstOrDefault() is { } fault ? throw file.Fault(fault) : file.Value;

    private IEnumerable<JsonFieldFault> Faults() => [.. Serial(), .. Count(), .. Values()];

    private IEnumerable<JsonFieldFault> Serial()
    {
        if (string.IsNullOrWhiteSpace(FixtureSerial))
            yield return new("fixtureSerial", "an empty text", "the serial number that the fixture gives",
                "Write the serial number from the box.");
    }

    private IEnumerable<JsonFieldFault> Count()
    {
        if (RelaysPicofarads.Count is < 1 or > MostRelays)
            yield return new("relaysPicofarads", $"{RelaysPicofarads.Count} numbers", $"one number a relay, 1 to {MostRelays} of them",
                "Write what each relay measured, relay 1 first.");
        if (RelayStandardUncertaintiesPicofarads is { } uncertainties && uncertainties.Count != RelaysPicofarads.Count)
            yield return new("relayStandardUncertaintiesPicofarads", $"{uncertainties.Count} numbers",
                $"{RelaysPicofarads.Count} numbers, one a relay",
                "Write one for each relay, or leave the field out.");
    }

    private IEnumerable<JsonFieldFault> Values() =>
        from relay in RelaysPicofarads.Index()
        where relay.Item is not (>= 0.5 and <= 1e9)
        select new JsonFieldFault(JsonFieldPath.Item("relaysPicofarads", relay.Index), FormattableString.Invariant($"{relay.Item}"),
            "picofarads, from 0.5 to 1,000,000,000", "Measure this relay again; one that adds nothing is broken.");
}
