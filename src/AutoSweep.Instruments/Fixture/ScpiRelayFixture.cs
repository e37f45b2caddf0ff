using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Fixture;

/// <summary>A relay fixture that speaks docs/fixture-protocol.md.</summary>
/// <remarks>Safe from several threads. Closing opens every relay; should that fail, the fixture's watchdog does it.</remarks>
public sealed class ScpiRelayFixture : ICapacitanceFixture
{
    // A way out must not hang on a dead fixture; its watchdog opens the relays anyway. In times of a query: 5 s.
    private const double LongestGoodbye = 2.5;

    private readonly ScpiSession _session;
    private readonly RelaySwitch _relays;
    private readonly RelayChooser _chooser;
    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private FixtureKeepAlive? _keepAlive;
    private bool _closed;

    private ScpiRelayFixture(
        ScpiSession session, InstrumentIdentity identity, FixtureCalibration calibration, TimeProvider time, ILogger log)
    {
        (_session, _time, _log, Identity) = (session, time, log, identity);
        _relays = new(session, log);
        _chooser = new(calibration.Stray, calibration.Relays);
    }

    /// <summary>What the fixture says it is.</summary>
    public InstrumentIdentity Identity { get; }

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
        var identity = await session.IdentifyAsync(cancellationToken);
        await FixtureCheck.CalibrationIsOfAsync(session, identity, calibration, cancellationToken);
        var fixture = new ScpiRelayFixture(session, identity, calibration, time, log);
        await fixture._relays.ReportErrorsAsync("from before,", cancellationToken);
        await FixtureCheck.PassesSelfTestAsync(session, cancellationToken);
        await fixture._relays.OpenAllAsync(cancellationToken);
        await fixture.StartWatchdogAsync(watchdog, cancellationToken);
        log.LogInformation("{Resource}: fixture {Identity}, {Smallest} to {Largest}", session.Resource, identity, fixture.Smallest,
            fixture.Largest);
        return fixture;
    }

    /// <inheritdoc/>
    public async Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken)
    {
        await _gate.WaitAsync(cancellationToken);
        try
        {
            ObjectDisposedException.ThrowIf(_closed, this);
            var choice = _chooser.Choose(wanted, await _relays.PresentAsync(cancellationToken));
            await _relays.SetAsync(choice.Closed, cancellationToken);
            return choice.Total;
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <inheritdoc/>
    public async Task OpenAllAsync(CancellationToken cancellationToken)
    {
        await _gate.WaitAsync(cancellationToken);
        try
        {
            if (!_closed)
                await _relays.OpenAllAsync(cancellationToken);
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _gate.WaitAsync();
        try
        {
            if (_closed)
                return;
            _closed = true;
            if (_keepAlive is not null)
                await _keepAlive.DisposeAsync();
            await LeaveOpenAsync();
            await _session.DisposeAsync();
        }
        finally
        {
            _gate.Release();
        }
    }

    private async Task StartWatchdogAsync(TimeSpan watchdog, CancellationToken cancellationToken)
    {
        await _session.SendAsync(string.Create(CultureInfo.InvariantCulture, $"SYST:WATC {watchdog.TotalSeconds}"), cancellationToken);
        await _relays.ReportErrorsAsync("at the watchdog's setting,", cancellationToken);
        if (watchdog > TimeSpan.Zero)
            _keepAlive = new(_session, watchdog, _time, _log);
    }

    // The watchdog is turned off only when every relay was read back open.
    private async Task LeaveOpenAsync()
    {
        using var goodbye = new CancellationTokenSource(LongestGoodbye * _session.QueryTimeout, _time);
        try
        {
            await _relays.OpenAllAsync(goodbye.Token);
            await _session.SendAsync("SYST:WATC 0", goodbye.Token);
        }
        catch (Exception exception) when (exception is BenchFaultException or OperationCanceledException)
        {
            _log.LogError("{Resource}: the relays could not be opened; the fixture's watchdog will do it. {Cause}", _session.Resource,
                exception.Message);
        }
    }
}
