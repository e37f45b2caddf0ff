using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Fixture;

/// <summary>A relay fixture that speaks docs/fixture-protocol.md, with its calibration.</summary>
/// <remarks>Safe from several threads. Closing opens every relay; should that fail, the fixture's watchdog does it.</remarks>
public sealed class ScpiRelayFixture : ICapacitanceFixture
{
    private readonly ScpiRelayBox _box;
    private readonly RelayChooser _chooser;

    private ScpiRelayFixture(ScpiRelayBox box, FixtureCalibration calibration) =>
        (_box, _chooser) = (box, new(calibration.Stray, calibration.Relays));

    /// <summary>What the fixture says it is.</summary>
    public InstrumentIdentity Identity => _box.Identity;

    /// <inheritdoc/>
    public string Serial => Identity.Serial;

    /// <inheritdoc/>
    public Capacitance Smallest => _chooser.Smallest;

    /// <inheritdoc/>
    public Capacitance Largest => _chooser.Largest;

    /// <summary>Checks that the calibration is this fixture's, tests its coils, opens every relay and starts the watchdog.</summary>
    /// <param name="session">A session, which the fixture owns from now on.</param>
    /// <param name="calibration">What its relays measured.</param>
    /// <param name="watchdog">After how long without a message it opens every relay by itself; zero for never.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes errors that the fixture reports.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">Another fixture's calibration, a failed self-test, a relay that does not open, no
    /// answer.</exception>
    public static async Task<ScpiRelayFixture> OpenAsync(
        ScpiSession session,
        FixtureCalibration calibration,
        TimeSpan watchdog,
        TimeProvider time,
        ILogger log,
        CancellationToken cancellationToken)
    {
        var fixture = new ScpiRelayFixture(
            await ScpiRelayBox.OpenAsync(session, calibration, watchdog, time, log, cancellationToken), calibration);
        log.LogInformation("{Resource}: fixture {Identity}, {Smallest} to {Largest}", session.Resource, fixture.Identity, fixture.Smallest,
            fixture.Largest);
        return fixture;
    }

    /// <inheritdoc/>
    public async Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken)
    {
        RelayChoice choice = default;
        await _box.CloseAsync(present => (choice = _chooser.Choose(wanted, present)).Closed, cancellationToken);
        return choice.Total;
    }

    /// <inheritdoc/>
    public Task<bool> StandsAsync(CancellationToken cancellationToken) => _box.StandsAsync(cancellationToken);

    /// <inheritdoc/>
    public Task OpenAllAsync(CancellationToken cancellationToken) => _box.OpenAllAsync(cancellationToken);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _box.DisposeAsync();
}
