namespace AutoSweep.Instruments.Fixture;

/// <summary>A relay fixture taken as a box of relays, without a calibration: for calibrating it and for checking the calibration.</summary>
public interface IRelayBox : IAsyncDisposable
{
    /// <summary>The fixture's serial number, which keys its calibration.</summary>
    string Serial { get; }

    /// <summary>How many relays it has.</summary>
    int RelayCount { get; }

    /// <summary>Closes exactly these relays, reads them back, and returns when the last one has stopped bouncing.</summary>
    /// <exception cref="Core.BenchFaultException">The relays read back are not those that were set, or the fixture does not
    /// answer.</exception>
    Task CloseExactlyAsync(RelaySet relays, CancellationToken cancellationToken);

    /// <summary>Whether the relays that were closed last still are. A box opens them by itself when it hears nothing for too long: what was read meanwhile
    /// counts only if this says so afterwards.</summary>
    /// <exception cref="Core.BenchFaultException">The fixture does not answer.</exception>
    Task<bool> StandsAsync(CancellationToken cancellationToken);

    /// <summary>The temperature in the box, in degrees Celsius; null where it has no thermometer.</summary>
    Task<double?> ReadTemperatureAsync(CancellationToken cancellationToken);
}
