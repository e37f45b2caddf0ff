using System.Text.Json.Serialization;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Files;

namespace AutoSweep.Instruments.Fixture;

/// <summary>What a fixture's relays and its stray measured, one by one, with a capacitance meter: a strict JSON file.</summary>
public sealed record FixtureCalibration
{
    // 2 to the 20th combinations fill 12 MB and sort in a fraction of a second; a real box has 16 relays.
    private const int MostRelays = 20;

    /// <summary>Where the schema is, for editors; not read.</summary>
    [JsonPropertyName("$schema")]
    public string? Schema { get; init; }

    /// <summary>The fixture's serial number, as its <c>*IDN?</c> gives it.</summary>
    public required string FixtureSerial { get; init; }

    /// <summary>What the open fixture measures at its clips, in picofarads: leads, clips and open contacts; 0 or more.</summary>
    public required double StrayPicofarads { get; init; }

    /// <summary>What each relay adds, in picofarads, relay 1 first; above 0.</summary>
    public required IReadOnlyList<double> RelaysPicofarads { get; init; }

    /// <summary>The day of the measurement.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The meter used, its serial number, its test frequency.</summary>
    public string? Meter { get; init; }

    /// <summary>The temperature in the box, in degrees Celsius.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>One standard uncertainty of the stray, in picofarads.</summary>
    public double? StrayStandardUncertaintyPicofarads { get; init; }

    /// <summary>One standard uncertainty of each relay, in picofarads, relay 1 first.</summary>
    public IReadOnlyList<double>? RelayStandardUncertaintiesPicofarads { get; init; }

    /// <summary>Anything else worth knowing.</summary>
    public string? Note { get; init; }

    /// <summary>The stray, to the nearest picofarad.</summary>
    [JsonIgnore]
    public Capacitance Stray => Capacitance.FromPicofarads(StrayPicofarads);

    /// <summary>The relays, each to the nearest picofarad, relay 1 first.</summary>
    [JsonIgnore]
    public IReadOnlyList<Capacitance> Relays => [.. RelaysPicofarads.Select(Capacitance.FromPicofarads)];

    /// <summary>Reads and checks a calibration file.</summary>
    /// <exception cref="Core.BenchFaultException">Missing or not in the format; names the field, what was found and expected.</exception>
    public static FixtureCalibration Read(string path)
    {
        const string What = "calibration file";
        var calibration = StrictJson.Read<FixtureCalibration>(path, What);
        return calibration.Problem() is { } problem ? throw StrictJson.BadValue(path, What, problem.Found, problem.Expected) : calibration;
    }

    private (string Found, string Expected)? Problem()
    {
        if (string.IsNullOrWhiteSpace(FixtureSerial))
            return ("fixtureSerial is empty", "the serial number that the fixture gives");
        if (StrayPicofarads is not (>= 0 and < 1e6))
            return (FormattableString.Invariant($"strayPicofarads {StrayPicofarads}"), "picofarads, from 0 to 1,000,000");
        if (RelaysPicofarads.Count is < 1 or > MostRelays)
            return (FormattableString.Invariant($"relaysPicofarads with {RelaysPicofarads.Count} numbers"), FormattableString.Invariant($"one number a relay, 1 to {MostRelays} of them"));
        var odd = RelaysPicofarads.Index().FirstOrDefault(relay => relay.Item is not (>= 0.5 and < 1e9), (-1, 0));
        if (odd.Index >= 0)
            return (FormattableString.Invariant($"relaysPicofarads, relay {odd.Index + 1}: {odd.Item}"), "picofarads, from 0.5 to 1,000,000,000");
        return RelayStandardUncertaintiesPicofarads is { } uncertainties && uncertainties.Count != RelaysPicofarads.Count
            ? (FormattableString.Invariant($"relayStandardUncertaintiesPicofarads with {uncertainties.Count} numbers"), "as many as relaysPicofarads has")
            : null;
    }
}
