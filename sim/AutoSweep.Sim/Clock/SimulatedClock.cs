namespace AutoSweep.Sim.Clock;

/// <summary>The bench's clock: it starts at zero and runs a chosen number of times faster than real time.</summary>
/// <remarks>
/// At rate 60 a reading of 20 ms passes in a third of a real millisecond, less than a timer can wait. Such a wait ends at once and
/// lifts the clock to its end; the clock then stands until real time has caught up, so it is never more than
/// <see cref="FinestRealWait"/> ahead and never goes back. Physics is evaluated at the time that was waited for.
/// </remarks>
internal sealed class SimulatedClock : TimeProvider
{
    /// <summary>What an operating system's timer can be trusted to wait: .NET timers count whole milliseconds.</summary>
    public static readonly TimeSpan FinestRealWait = TimeSpan.FromMilliseconds(1);

    private readonly TimeProvider real;
    private readonly long start;
    private long floorTicks;

    public SimulatedClock(double rate, TimeProvider? real = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate);
        (Rate, this.real) = (rate, real ?? System);
        start = this.real.GetTimestamp();
    }

    /// <summary>Simulated seconds in a real one.</summary>
    public double Rate { get; }

    /// <summary>Simulated time since the start.</summary>
    public TimeSpan Now => TimeSpan.FromTicks(Math.Max(Scaled.Ticks, Interlocked.Read(ref floorTicks)));

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    private TimeSpan Scaled => real.GetElapsedTime(start) * Rate;

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
        Lift(time);
    }

    private TimeSpan RealWait(TimeSpan time) => (time - Scaled) / Rate;

    private TimeSpan InRealTime(TimeSpan simulated) =>
        simulated == Timeout.InfiniteTimeSpan || simulated == TimeSpan.Zero ? simulated : simulated / Rate;

    private void Lift(TimeSpan time)
    {
        for (var seen = Interlocked.Read(ref floorTicks); seen < time.Ticks; seen = Interlocked.Read(ref floorTicks))
            Interlocked.CompareExchange(ref floorTicks, time.Ticks, seen);
    }
}
