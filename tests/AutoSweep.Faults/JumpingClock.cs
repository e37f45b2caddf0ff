namespace AutoSweep.Faults;

/// <summary>A clock that stands still until somebody waits, and then is at the end of the wait at once.</summary>
/// <remarks>For one thread of work: hours of bench time pass in the time that their arithmetic takes. What else would have happened in a
/// wait (the hands at the clip) is told to happen at its time, in order.</remarks>
internal sealed class JumpingClock : TimeProvider
{
    private readonly PriorityQueue<Action, TimeSpan> due = new();
    private TimeSpan now;

    /// <summary>Time since the start.</summary>
    public TimeSpan Now => now;

    /// <summary>How long a run may last before it is called endless.</summary>
    public TimeSpan Limit { get; init; } = TimeSpan.FromHours(24);

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => now.Ticks;

    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch + now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        if (dueTime != Timeout.InfiniteTimeSpan)
        {
            Pass(dueTime);
            callback(state);
        }

        return new Spent();
    }

    /// <summary>Lets time pass.</summary>
    public void Pass(TimeSpan time)
    {
        var end = now + time;
        while (due.TryPeek(out _, out var at) && at <= end)
        {
            now = at > now ? at : now;
            due.Dequeue()();
        }

        now = end;
        if (now > Limit)
            throw new TimeoutException($"The run is still going after {now}.");
    }

    /// <summary>Does something when its time has come.</summary>
    public void After(TimeSpan wait, Action what) => due.Enqueue(what, now + wait);

    private sealed class Spent : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => false;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
