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
    // A meter that hunts for its range may overload once (meter manuals).
    private const int Tries = 3;

    /// <inheritdoc/>
    /// <exception cref="BenchFaultException">The meter gives no value, or the fixture does not do as told.</exception>
    public async Task<IReadOnlyList<CalibrationReading>?> ReadAsync(RelaySet relays, int repeats, CancellationToken cancellationToken)
    {
        await box.CloseExactlyAsync(relays, cancellationToken);
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
