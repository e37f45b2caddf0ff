using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>A clock that the test moves, and that knows whether somebody waits for it.</summary>
internal sealed class WaitedTime : FakeTimeProvider
{
    private readonly Lock gate = new();
    private TaskCompletionSource begun = New();
    private int waits;

    /// <summary>Done while somebody waits, or when somebody begins to.</summary>
    public Task SomebodyWaits
    {
        get
        {
            lock (gate) return begun.Task;
        }
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        if (dueTime < TimeSpan.Zero) return base.CreateTimer(callback, state, dueTime, period);
        var wait = new Wait(this);
        wait.Timer = base.CreateTimer(given => { wait.End(); callback(given); }, state, dueTime, period);
        wait.Begin(); // only now that it is set: the test lets the time pass at once
        return wait;
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private void Count(int by)
    {
        waits += by;
        if (waits > 0) begun.TrySetResult();
        else if (begun.Task.IsCompleted) begun = New();
    }

    private sealed class Wait(WaitedTime time) : ITimer
    {
        private bool counted;
        private bool ended;

        public ITimer? Timer { get; set; }

        public void Begin()
        {
            lock (time.gate)
            {
                if (ended) return;
                counted = true;
                time.Count(1);
            }
        }

        public void End()
        {
            lock (time.gate)
            {
                if (counted && !ended) time.Count(-1);
                ended = true;
            }
        }

        public bool Change(TimeSpan dueTime, TimeSpan period) => Timer!.Change(dueTime, period);

        public void Dispose()
        {
            End();
            Timer?.Dispose();
        }

        public ValueTask DisposeAsync()
        {
            End();
            return Timer?.DisposeAsync() ?? default;
        }
    }
}
