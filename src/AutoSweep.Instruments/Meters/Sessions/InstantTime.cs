namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>A clock on which every wait under an hour is over at once, and a longer one ends only when it is told to.</summary>
/// <remarks>A replay sets every time-out to hours: settling passes without waiting, and a time-out never strikes by itself.</remarks>
public sealed class InstantTime : TimeProvider
{
    private static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    private readonly Lock _lock = new();
    private readonly HashSet<InstantTimer> _timeouts = [];
    private long _ticks;

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc/>
    public override long GetTimestamp() => Interlocked.Read(ref _ticks);

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new InstantTimer(this, callback, state);
        timer.Change(dueTime, period);
        return timer;
    }

    /// <summary>Lets every time-out that is under way strike now.</summary>
    public void StrikeTimeouts()
    {
        InstantTimer[] due;
        lock (_lock)
        {
            due = [.. _timeouts];
            _timeouts.Clear();
        }

        foreach (var timer in due)
            timer.Strike();
    }

    private void Forget(InstantTimer timer)
    {
        lock (_lock)
            _timeouts.Remove(timer);
    }

    private void Keep(InstantTimer timer)
    {
        lock (_lock)
            _timeouts.Add(timer);
    }

    private sealed class InstantTimer(InstantTime time, TimerCallback callback, object? state) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            time.Forget(this);
            if (dueTime < TimeSpan.Zero)
                return true;
            if (dueTime >= Longest)
            {
                time.Keep(this);
                return true;
            }

            Interlocked.Add(ref time._ticks, dueTime.Ticks);
            Strike();
            return true;
        }

        // Never on the thread that asks: who waits may hold a lock.
        public void Strike() => ThreadPool.QueueUserWorkItem(_ => callback(state));

        public void Dispose() => time.Forget(this);

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
