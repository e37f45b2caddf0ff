namespace AutoSweep.Worker.Bench;

/// <summary>A clock that runs a whole number of times faster than the wall's, for a simulated bench whose clock does the same.</summary>
/// <remarks>On a real bench the rate is 1. Only waits and elapsed times speed up; the journal's times come from the wall clock.</remarks>
/// <param name="rate">How many bench seconds pass in one wall second; 1 or more.</param>
public sealed class AcceleratedTimeProvider(double rate) : TimeProvider
{
    private readonly long _start = System.GetTimestamp();
    private readonly DateTimeOffset _startTime = System.GetUtcNow();

    /// <inheritdoc/>
    public override long TimestampFrequency => System.TimestampFrequency;

    /// <inheritdoc/>
    public override long GetTimestamp() => _start + (long)((System.GetTimestamp() - _start) * rate);

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => _startTime + System.GetElapsedTime(_start) * rate;

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new AcceleratedTimer(System.CreateTimer(callback, state, Shortened(dueTime), Shortened(period)), this);

    private TimeSpan Shortened(TimeSpan span) => span <= TimeSpan.Zero ? span : span / rate;

    // A time-out that is set anew must be shortened like the first one.
    private sealed class AcceleratedTimer(ITimer timer, AcceleratedTimeProvider clock) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => timer.Change(clock.Shortened(dueTime), clock.Shortened(period));

        public void Dispose() => timer.Dispose();

        public ValueTask DisposeAsync() => timer.DisposeAsync();
    }
}
