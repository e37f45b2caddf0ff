using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Fixture;

/// <summary>Keeps an idle fixture's watchdog fed.</summary>
/// <remarks>Any message feeds it; a query is sent so that a dead line shows. Three of them fit into the watchdog's time, so one may be
/// lost.</remarks>
internal sealed class FixtureKeepAlive : IAsyncDisposable
{
    private readonly ScpiSession _session;
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private readonly PeriodicTimer _timer;
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _loop;

    public FixtureKeepAlive(ScpiSession session, TimeSpan watchdog, TimeProvider time, ILogger log)
    {
        (_session, _time, _log) = (session, time, log);
        _timer = new(watchdog / 3, time);
        _loop = FeedAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _timer.Dispose();
        await _loop;
        _stop.Dispose();
    }

    private async Task FeedAsync()
    {
        try
        {
            while (await _timer.WaitForNextTickAsync(_stop.Token))
            {
                if (_time.GetElapsedTime(_session.LastExchange) >= _timer.Period / 2)
                    await FeedOnceAsync();
            }
        }
        catch (OperationCanceledException)
        {
            // The fixture is being closed.
        }
    }

    // A fault here is not thrown at anybody: the next relay command meets it and reads the relays back.
    private async Task FeedOnceAsync()
    {
        try
        {
            await _session.QueryAsync("SYST:WATC?", _stop.Token);
        }
        catch (BenchFaultException fault)
        {
            _log.LogWarning("{Resource}: the fixture's watchdog could not be fed: {Found}", _session.Resource, fault.Found);
        }
    }
}
