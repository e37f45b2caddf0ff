using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Calibration;

/// <summary>Measures what a set of relays makes: with a capacitance meter on the wire, or with a person who types what it shows.</summary>
public interface IRelaySetReader
{
    /// <summary>Closes exactly these relays and reads.</summary>
    /// <param name="relays">The relays.</param>
    /// <param name="repeats">How many readings.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>The readings; null to take the readings of the set before back.</returns>
    Task<IReadOnlyList<CalibrationReading>?> ReadAsync(RelaySet relays, int repeats, CancellationToken cancellationToken);
}
