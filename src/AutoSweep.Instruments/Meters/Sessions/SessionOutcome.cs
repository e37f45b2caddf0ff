using System.Globalization;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>What comes of a call, as a session file writes it after <c>=</c>.</summary>
public static class SessionOutcome
{
    /// <summary>A level or a frequency: <c>value NUMBER</c>, <c>overload</c>, <c>no data</c>, <c>invalid</c>.</summary>
    public static string Of(MeterReading reading) => reading.Kind switch
    {
        MeterReadingKind.Value => string.Create(CultureInfo.InvariantCulture, $"value {reading.Value}"),
        MeterReadingKind.Overload => "overload",
        MeterReadingKind.NoData => "no data",
        _ => "invalid",
    };

    /// <summary>A capacitance: <c>capacitance NUMBER pF</c>, with <c>, D NUMBER</c> where the meter gives it, <c>overload</c>,
    /// <c>no contact</c>, <c>invalid</c>.</summary>
    /// <remarks>To a ten-thousandth of a picofarad: farads times 1e12 is not exact in binary.</remarks>
    public static string Of(CapacitanceReading reading) => reading.Kind switch
    {
        CapacitanceReadingKind.Value when reading.Dissipation is { } dissipation =>
            string.Create(CultureInfo.InvariantCulture, $"capacitance {reading.Picofarads:0.####} pF, D {dissipation}"),
        CapacitanceReadingKind.Value => string.Create(CultureInfo.InvariantCulture, $"capacitance {reading.Picofarads:0.####} pF"),
        CapacitanceReadingKind.Overload => "overload",
        CapacitanceReadingKind.NoContact => "no contact",
        _ => "invalid",
    };

    /// <summary>A series of level samples: <c>series of COUNT, LEAST to MOST</c>, or <c>no series</c>.</summary>
    public static string Of(LevelBurst? burst) => burst is null
        ? "no series"
        : string.Create(CultureInfo.InvariantCulture, $"series of {burst.Volts.Count}, {burst.Volts.Min()} to {burst.Volts.Max()}");
}
