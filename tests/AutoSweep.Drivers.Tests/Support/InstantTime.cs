namespace AutoSweep.Drivers.Tests.Support;

/// <summary>A clock on which every wait under an hour is over at once, and no longer one ever ends.</summary>
/// <remarks>Settling times pass without waiting; time-outs are set to hours by the replay and so never strike.</remarks>
public sealed class InstantTime : TimeProvider
{
    private long _ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Interlocked.Read(ref _ticks);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new InstantTimer(this, callback, state, dueTime);

    private sealed class InstantTimer : ITimer
    {
        private readonly InstantTime _time;
        private readonly TimerCallback _callback;
        private readonly object? _state;

        public InstantTimer(InstantTime time, TimerCallback callback, object? state, TimeSpan dueTime)
        {
            (_time, _callback, _state) = (time, callback, state);
            Change(dueTime, Timeout.InfiniteTimeSpan);
        }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            if (dueTime < TimeSpan.Zero || dueTime >= TimeSpan.FromHours(1))
                return true;
            Interlocked.Add(ref _time._ticks, dueTime.Ticks);
            ThreadPool.QueueUserWorkItem(_ => _callback(_state));
            return true;
        }

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
