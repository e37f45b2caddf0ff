using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Calibration;

/// <summary>Sets of relays read by a capacitance meter at the fixture's clips.</summary>
/// <param name="box">The relays.</param>
/// <param name="meter">The meter.</param>
public sealed class MeteredSets(IRelayBox box, ICapacitanceMeter meter) : IRelaySetReader
{
    // A meter that hunts for its range may overload once (meter manuals); a computer is held up once.
    private const int Tries = 3;

    /// <inheritdoc/>
    /// <exception cref="BenchFaultException">The meter gives no value, or the fixture does not do as told or lets go by itself.</exception>
    public async Task<IReadOnlyList<CalibrationReading>?> ReadAsync(RelaySet relays, int repeats, CancellationToken cancellationToken)
    {
        for (var attempt = 1; attempt <= Tries; attempt++)
        {
            await box.CloseExactlyAsync(relays, cancellationToken);
            var readings = await ReadClosedAsync(relays, repeats, cancellationToken);
            // A computer that was held up for longer than the box's watchdog waits has read open relays.
            if (await box.StandsAsync(cancellationToken))
                return readings;
        }

        throw new BenchFaultException(
            BenchFault.FixtureFault,
            $"the fixture {box.Serial} opened its relays by itself while {relays.Named()} were read, {Tries} times in a row",
            "relays that stay closed while they are read",
            "check the fixture's supply and its watchdog");
    }

    private async Task<List<CalibrationReading>> ReadClosedAsync(RelaySet relays, int repeats, CancellationToken cancellationToken)
    {
        List<CalibrationReading> readings = [];
        while (readings.Count < repeats)
        {
            var reading = await ReadOnceAsync(relays, cancellationToken);
            readings.Add(new(relays.Mask, reading.Picofarads, reading.Dissipation));
        }

        return readings;
    }

    private async Task<CapacitanceReading> ReadOnceAsync(RelaySet relays, CancellationToken cancellationToken)
    {
        CapacitanceReading reading = default;
        for (var attempt = 1; attempt <= Tries; attempt++)
        {
            reading = await meter.ReadAsync(cancellationToken);
            if (reading.Kind == CapacitanceReadingKind.Value)
                return reading;
        }

        throw new BenchFaultException(
            BenchFault.NoAnswer,
            $"the capacitance meter gives {reading.Kind} (\"{reading.Raw}\") with "
            + (relays.IsEmpty ? "every relay open" : relays.Named() + " closed"),
            "a capacitance",
            "check that the meter's leads are on the fixture's clips, and nothing else; a short between the clips gives an overload");
    }
}
