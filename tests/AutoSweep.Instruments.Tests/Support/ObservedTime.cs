using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A clock that the test moves, and that tells when somebody has begun to wait for it.</summary>
public sealed class ObservedTime : FakeTimeProvider
{
    private readonly Channel<TimeSpan> _waits = Channel.CreateUnbounded<TimeSpan>();

    /// <summary>Waits until somebody waits for just this long, then lets the time pass.</summary>
    public async Task ElapseAsync(TimeSpan wait)
    {
        await AwaitedAsync(wait);
        Advance(wait);
    }

    public async Task AwaitedAsync(TimeSpan wait)
    {
        while (await _waits.Reader.ReadAsync().AsTask().WaitAsync(Patience.Limit) != wait)
        {
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new ObservedTimer(base.CreateTimer(callback, state, dueTime, period), _waits.Writer);
        _waits.Writer.TryWrite(dueTime);
        return timer;
    }

    // Polly takes its timers from a pool and sets them anew. Told of only once it is set: the test moves the clock at once.
    private sealed class ObservedTimer(ITimer inner, ChannelWriter<TimeSpan> waits) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            var changed = inner.Change(dueTime, period);
            waits.TryWrite(dueTime);
            return changed;
        }

        public void Dispose() => inner.Dispose();

        public ValueTask DisposeAsync() => inner.DisposeAsync();
    }
}
