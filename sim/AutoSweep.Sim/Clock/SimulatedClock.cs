namespace AutoSweep.Sim.Clock;

/// <summary>The bench's clock: it starts at zero and runs a chosen number of times faster than real time.</summary>
/// <remarks>
/// At rate 60 a reading of 20 ms passes in a third of a real millisecond, less than a timer can wait. Such a wait is skipped: the
/// clock jumps to its end and runs on from there. So the bench may be further on than the rate says, and never less: a worker
/// that lets a detector settle by a clock of the same rate always gets the whole time. Physics is evaluated at the time waited for.
/// </remarks>
internal sealed class SimulatedClock : TimeProvider
{
    /// <summary>What an operating system's timer can be trusted to wait: .NET timers count whole milliseconds.</summary>
    public static readonly TimeSpan FinestRealWait = TimeSpan.FromMilliseconds(1);

    private readonly Lock gate = new();
    private readonly TimeProvider real;
    private readonly long start;
    private long skippedTicks;

    public SimulatedClock(double rate, TimeProvider? real = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate);
        (Rate, this.real) = (rate, real ?? System);
        start = this.real.GetTimestamp();
    }

    /// <summary>Simulated seconds in a real one.</summary>
    public double Rate { get; }

    /// <summary>Simulated time since the start.</summary>
    public TimeSpan Now => (real.GetElapsedTime(start) * Rate) + TimeSpan.FromTicks(Interlocked.Read(ref skippedTicks));

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Now.Ticks;

    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch + Now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        real.CreateTimer(callback, state, InRealTime(dueTime), InRealTime(period));

    /// <summary>Waits until a simulated time; at its end <see cref="Now"/> is that time or later.</summary>
    public async ValueTask WaitUntilAsync(TimeSpan time, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        for (var wait = RealWait(time); wait >= FinestRealWait; wait = RealWait(time))
            await Task.Delay(wait, real, cancellationToken);
        SkipTo(time);
    }

    private TimeSpan RealWait(TimeSpan time) => (time - Now) / Rate;

    private TimeSpan InRealTime(TimeSpan simulated) =>
        simulated == Timeout.InfiniteTimeSpan || simulated == TimeSpan.Zero ? simulated : simulated / Rate;

    private void SkipTo(TimeSpan time)
    {
        lock (gate)
        {
            var rest = time - Now;
            if (rest > TimeSpan.Zero) Interlocked.Add(ref skippedTicks, rest.Ticks);
        }
    }
}
