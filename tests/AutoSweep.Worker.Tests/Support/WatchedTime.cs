using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A told time that knows whether somebody waits a short while of it: so a test can let time pass only when the work has come to a wait.</summary>
internal sealed class WatchedTime : FakeTimeProvider
{
    private static readonly TimeSpan Short = TimeSpan.FromSeconds(1);

    private int _waits;

    /// <summary>Whether a wait of a second or less is under way.</summary>
    public bool SomebodyWaits => Volatile.Read(ref _waits) > 0;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        if (dueTime <= TimeSpan.Zero || dueTime > Short)
            return base.CreateTimer(callback, state, dueTime, period);
        var wait = new ShortWait(this);
        wait.Timer = base.CreateTimer(given => { wait.End(); callback(given); }, state, dueTime, period);
        Interlocked.Increment(ref _waits); // only now: the test lets the time pass at once
        return wait;
    }

    private sealed class ShortWait(WatchedTime time) : ITimer
    {
        private int _ended;

        public ITimer? Timer { get; set; }

        public bool Change(TimeSpan dueTime, TimeSpan period) => Timer!.Change(dueTime, period);

        public void End()
        {
            if (Interlocked.Exchange(ref _ended, 1) == 0)
                Interlocked.Decrement(ref time._waits);
        }

        public void Dispose()
        {
            End();
            Timer?.Dispose();
        }

        public async ValueTask DisposeAsync()
        {
            End();
            if (Timer is not null)
                await Timer.DisposeAsync();
        }
    }
}
