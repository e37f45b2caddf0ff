using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Fixture;

/// <summary>The relays of a fixture that speaks docs/fixture-protocol.md.</summary>
/// <remarks>Safe from several threads. Closing opens every relay; should that fail, the fixture's watchdog does it.</remarks>
public sealed class ScpiRelayBox : IRelayBox
{
    // A way out must not hang on a dead fixture; its watchdog opens the relays anyway. In times of a query: 5 s.
    private const double LongestGoodbye = 2.5;

    private readonly ScpiSession _session;
    private readonly RelaySwitch _relays;
    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private FixtureKeepAlive? _keepAlive;
    private bool _closed;

    private ScpiRelayBox(ScpiSession session, InstrumentIdentity identity, int relayCount, TimeProvider time, ILogger log)
    {
        (_session, _time, _log, Identity, RelayCount) = (session, time, log, identity, relayCount);
        _relays = new(session, log);
    }

    /// <summary>What the fixture says it is.</summary>
    public InstrumentIdentity Identity { get; }

    /// <inheritdoc/>
    public string Serial => Identity.Serial;

    /// <inheritdoc/>
    public int RelayCount { get; }

    /// <summary>Identifies the fixture, tests its coils, opens every relay and starts the watchdog.</summary>
    /// <param name="session">A session, which the fixture owns from now on.</param>
    /// <param name="watchdog">After how long without a message it opens every relay by itself; zero for never.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes errors that the fixture reports.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">A failed self-test, a relay that does not open, no answer.</exception>
    public static Task<ScpiRelayBox> OpenAsync(
        ScpiSession session, TimeSpan watchdog, TimeProvider time, ILogger log, CancellationToken cancellationToken) =>
        OpenAsync(session, null, watchdog, time, log, cancellationToken);

    /// <summary>The same, after a check that the fixture is the calibration's.</summary>
    internal static async Task<ScpiRelayBox> OpenAsync(
        ScpiSession session,
        FixtureCalibration? calibration,
        TimeSpan watchdog,
        TimeProvider time,
        ILogger log,
        CancellationToken cancellationToken)
    {
        var identity = await session.IdentifyAsync(cancellationToken);
        var relays = await FixtureCheck.RelaysAsync(session, identity, calibration, cancellationToken);
        var box = new ScpiRelayBox(session, identity, relays, time, log);
        await box._relays.ReportErrorsAsync("from before,", cancellationToken);
        await FixtureCheck.PassesSelfTestAsync(session, cancellationToken);
        await box._relays.OpenAllAsync(cancellationToken);
        await box.StartWatchdogAsync(watchdog, cancellationToken);
        return box;
    }

    /// <inheritdoc/>
    public async Task CloseExactlyAsync(RelaySet relays, CancellationToken cancellationToken) =>
        await CloseAsync(_ => relays, cancellationToken);

    /// <summary>Closes exactly the relays that are chosen in view of those that are closed now.</summary>
    internal Task CloseAsync(Func<RelaySet, RelaySet> choose, CancellationToken cancellationToken) => ExclusiveAsync(async () =>
    {
        ObjectDisposedException.ThrowIf(_closed, this);
        await _relays.SetAsync(choose(await _relays.PresentAsync(cancellationToken)), cancellationToken);
    }, cancellationToken);

    /// <summary>Opens every relay; no effect on a closed fixture.</summary>
    internal Task OpenAllAsync(CancellationToken cancellationToken) => ExclusiveAsync(async () =>
    {
        if (!_closed)
            await _relays.OpenAllAsync(cancellationToken);
    }, cancellationToken);

    /// <inheritdoc/>
    public async Task<bool> StandsAsync(CancellationToken cancellationToken)
    {
        var stands = false;
        await ExclusiveAsync(async () => stands = await _relays.StandsAsync(cancellationToken), cancellationToken);
        return stands;
    }

    /// <inheritdoc/>
    public async Task<double?> ReadTemperatureAsync(CancellationToken cancellationToken)
    {
        try
        {
            return ScpiNumber.Parse((await _session.QueryAsync("MEAS:TEMP?", cancellationToken)).Trim());
        }
        catch (BenchFaultException fault) when (fault.Kind == BenchFault.NoAnswer)
        {
            await _relays.ReportErrorsAsync("asked for its temperature,", cancellationToken);
            return null;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await ExclusiveAsync(async () =>
    {
        if (_closed)
            return;
        _closed = true;
        if (_keepAlive is not null)
            await _keepAlive.DisposeAsync();
        await LeaveOpenAsync();
        await _session.DisposeAsync();
    }, CancellationToken.None);

    private async Task ExclusiveAsync(Func<Task> act, CancellationToken cancellationToken)
    {
        await _gate.WaitAsync(cancellationToken);
        try
        {
            await act();
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
