using AutoSweep.Core.Quantities;

namespace AutoSweep.Instruments.Fixture;

/// <summary>A decade-capacitance fixture that sets the nearest calibrated value to a wanted one.</summary>
public interface ICapacitanceFixture : IAsyncDisposable
{
    /// <summary>The fixture's serial number, which keys its calibration.</summary>
    string Serial { get; }

    /// <summary>The smallest calibrated total: every relay open, the stray alone.</summary>
    Capacitance Smallest { get; }

    /// <summary>The largest calibrated total: every relay closed.</summary>
    Capacitance Largest { get; }

    /// <summary>Sets the combination whose calibrated total is nearest to the wanted one (then fewest relay operations), reads the
    /// relays back, and returns when the last one has stopped bouncing.</summary>
    /// <returns>The calibrated total now in circuit.</returns>
    /// <exception cref="Core.BenchFaultException">The relays read back are not those that were set, or the fixture does not
    /// answer.</exception>
    Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken);

    /// <summary>Whether what was set last still stands. A fixture opens its relays by itself when it hears nothing for too long, and a computer that was held
    /// up or asleep in the middle of a reading does not notice: what was read then counts only if this says so afterwards.</summary>
    /// <exception cref="Core.BenchFaultException">The fixture does not answer.</exception>
    Task<bool> StandsAsync(CancellationToken cancellationToken);

    /// <summary>Opens every relay. Used on every way out; safe to call twice.</summary>
    Task OpenAllAsync(CancellationToken cancellationToken);
}
