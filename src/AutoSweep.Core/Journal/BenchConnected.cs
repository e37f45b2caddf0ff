namespace AutoSweep.Core.Journal;

/// <summary>The bench was connected and checked: which instruments took the readings that follow.</summary>
public sealed record BenchConnected : JournalEvent
{
    /// <summary>The meter's resource name.</summary>
    public required string MeterResource { get; init; }

    /// <summary>The meter's answer to <c>*IDN?</c>.</summary>
    public required string MeterIdentity { get; init; }

    /// <summary>The driver in use.</summary>
    public required string MeterDriver { get; init; }

    /// <summary>Gain of the front-end amplifier before the meter; 1 without one.</summary>
    public required double AmplifierGain { get; init; }

    /// <summary>The fixture's resource name; none where a stage needs no fixture.</summary>
    public string? FixtureResource { get; init; }

    /// <summary>The fixture's serial number, which keys its calibration.</summary>
    public string? FixtureSerial { get; init; }

    /// <summary>The fixture's stray in picofarads, from its calibration.</summary>
    public double? StrayPicofarads { get; init; }

    /// <summary>The day on which the fixture was calibrated; none where its calibration file or an old journal does not say.</summary>
    public DateOnly? FixtureCalibrated { get; init; }

    /// <summary>The meter that calibrated the fixture, as its calibration file names it.</summary>
    public string? FixtureCalibratedWith { get; init; }

    /// <summary>
    /// The standard uncertainty with every relay closed as a share of that total: the parts' uncertainties added as they are, an upper bound
    /// (docs/decisions/0006). None where the calibration file does not say.
    /// </summary>
    public double? FixtureRelativeUncertainty { get; init; }
}
