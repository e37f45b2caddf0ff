using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>The checks of instruments that are open, each with its result in plain words.</summary>
public static class WireChecks
{
    /// <summary>How often the open input is read.</summary>
    public const int NoiseReadings = 20;

    // The meter's lowest usual AC range; hum that overloads it is told as such.
    private const double LowestVolts = 0.05;
    private const double LowestHertz = 50;

    /// <summary>Whether the meter reads a level.</summary>
    public static async Task<WireResult> ReadsAsync(ILevelMeter meter, CancellationToken cancellationToken)
    {
        await meter.PrepareLevelAsync(LowestVolts, LowestHertz, cancellationToken);
        var reading = await meter.ReadLevelAsync(cancellationToken);
        return reading.Kind is MeterReadingKind.Value or MeterReadingKind.Overload
            ? new("Meter", WireVerdict.Good, $"{meter.Identity} answers and reads", "a level in volts")
            : new("Meter", WireVerdict.NotGood, $"{meter.Identity} answers, but gives no level (\"{reading.Raw}\")", "a level in volts",
                "Choose the driver of this meter's family, and look whether it stands on AC volts.");
    }

    /// <summary>What the open input shows.</summary>
    /// <param name="meter">The meter.</param>
    /// <param name="gain">The amplifier's gain.</param>
    /// <param name="settling">How long its detector takes.</param>
    /// <param name="clock">The bench's clock.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public static async Task<WireResult> IsQuietAsync(
        ILevelMeter meter, double gain, TimeSpan settling, TimeProvider clock, CancellationToken cancellationToken)
    {
        List<double> millivolts = [];
        await Task.Delay(settling, clock, cancellationToken);
        while (millivolts.Count < NoiseReadings)
        {
            var reading = await meter.ReadLevelAsync(cancellationToken);
            if (reading.Kind != MeterReadingKind.Value)
                return Overloaded(reading, meter.RangeVolts);
            millivolts.Add(1e3 * reading.Value / gain);
        }

        return OpenInput.Judge(millivolts, await ToneAsync(meter, cancellationToken));
    }

    // A single count is never trusted; two that agree within a per cent tell hum from noise.
    private static async Task<double?> ToneAsync(ILevelMeter meter, CancellationToken cancellationToken)
    {
        var (first, second) = (await meter.CountFrequencyAsync(cancellationToken), await meter.CountFrequencyAsync(cancellationToken));
        var agree = first.Kind == MeterReadingKind.Value && second.Kind == MeterReadingKind.Value
            && first.Value > 0 && Math.Abs(first.Value - second.Value) <= 0.01 * first.Value;
        return agree ? second.Value : null;
    }

    /// <summary>Whether every relay follows, each by itself; the box tests its coils when it is opened.</summary>
    public static async Task<WireResult> FollowsAsync(IRelayBox box, CancellationToken cancellationToken)
    {
        foreach (var relay in Enumerable.Range(0, box.RelayCount))
            await box.CloseExactlyAsync(new(1u << relay), cancellationToken);
        await box.CloseExactlyAsync(RelaySet.None, cancellationToken);
        return new("Fixture", WireVerdict.Good,
            string.Create(CultureInfo.InvariantCulture, $"box {box.Serial}: self-test passed, {box.RelayCount} relays closed and opened as told"),
            "every relay read back as it was set");
    }

    /// <summary>Whether the calibration is this box's.</summary>
    public static WireResult Belongs(FixtureCalibration calibration, IRelayBox box)
    {
        var expected = string.Create(CultureInfo.InvariantCulture, $"the calibration of box {box.Serial} with {box.RelayCount} relays");
        var found = string.Create(CultureInfo.InvariantCulture,
            $"a calibration of box {calibration.FixtureSerial} with {calibration.RelaysPicofarads.Count} relays")
            + (calibration.Date is { } date ? date.ToString("', of' yyyy-MM-dd", CultureInfo.InvariantCulture) : "");
        return calibration.FixtureSerial == box.Serial && calibration.RelaysPicofarads.Count == box.RelayCount
            ? new("Calibration", WireVerdict.Good, found, expected)
            : new("Calibration", WireVerdict.NotGood, found, expected,
                $"Choose the file of box {box.Serial}, connect box {calibration.FixtureSerial}, or calibrate this box anew.");
    }

    /// <summary>Whether the capacitance meter answers.</summary>
    public static async Task<WireResult> MeasuresAsync(ICapacitanceMeter meter, CancellationToken cancellationToken)
    {
        const string wire = "Capacitance meter";
        var reading = await meter.ReadAsync(cancellationToken);
        var name = string.Create(CultureInfo.InvariantCulture, $"{meter.Identity} at {meter.TestHertz:0} Hz");
        return reading.Kind switch
        {
            CapacitanceReadingKind.NoContact => new(wire, WireVerdict.Good, $"{name}, clips empty", "a capacitance, or empty clips"),
            CapacitanceReadingKind.Value => new(wire, WireVerdict.Good,
                $"{name}, {Capacitance.FromPicofarads(reading.Picofarads)} at its clips", "a capacitance, or empty clips"),
            CapacitanceReadingKind.Overload => new(wire, WireVerdict.Look, $"{name}, over its range", "a capacitance, or empty clips",
                "Look whether its clips touch each other."),
            _ => new(wire, WireVerdict.NotGood, $"{name}, an answer that cannot be read (\"{reading.Raw}\")", "a capacitance, or empty clips",
                "Choose the driver of this meter's family."),
        };
    }

    private static WireResult Overloaded(MeterReading reading, double rangeVolts) => new(OpenInput.Wire, WireVerdict.NotGood,
        string.Create(CultureInfo.InvariantCulture, $"{reading.Kind} in the range of {1e3 * rangeVolts:0} mV"), "a quiet input",
        "Take the clips off the generator. If it stays, look for a broken screen or an open ground of the meter's lead.");
}
