using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Calibration;

/// <summary>Sets of relays on instruments that may be unplugged: what is lost is waited for, and the set in hand is closed and read anew.</summary>
/// <param name="box">The relays.</param>
/// <param name="meter">The meter; none where values are typed.</param>
/// <param name="reader">What reads a set with both.</param>
public sealed class PausingSets(
    ReturningInstrument<IRelayBox> box, ReturningInstrument<ICapacitanceMeter>? meter, Func<IRelayBox, ICapacitanceMeter?, IRelaySetReader> reader)
    : IRelaySetReader
{
    /// <inheritdoc/>
    public Task<IReadOnlyList<CalibrationReading>?> ReadAsync(RelaySet relays, int repeats, CancellationToken cancellationToken) =>
        box.UseAsync(present => ReadAsync(present, relays, repeats, cancellationToken), cancellationToken);

    private Task<IReadOnlyList<CalibrationReading>?> ReadAsync(IRelayBox present, RelaySet relays, int repeats, CancellationToken cancellationToken) =>
        meter is null
            ? reader(present, null).ReadAsync(relays, repeats, cancellationToken)
            : meter.UseAsync(reading => reader(present, reading).ReadAsync(relays, repeats, cancellationToken), cancellationToken);
}
