using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A told time that says when somebody has begun to wait: only then may a test let it pass.</summary>
internal sealed class TimerSignals : FakeTimeProvider
{
    // Real time; a test that hangs fails instead.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Channel<TimeSpan> _begun = Channel.CreateUnbounded<TimeSpan>();

    private TimeSpan _forAnswer;

    /// <summary>A wait of this length or longer is for an answer that is on its way, and told of only when that will not come.</summary>
    public TimeSpan Answers { get; init; } = TimeSpan.MaxValue;

    /// <summary>Waits until somebody waits; how long.</summary>
    public Task<TimeSpan> SomebodyWaitsAsync() => _begun.Reader.ReadAsync().AsTask().WaitAsync(Patience, System);

    /// <summary>Tells of the latest wait for an answer, which will not come.</summary>
    public void NoAnswer() => _begun.Writer.TryWrite(_forAnswer);

    /// <summary>Lets every wait pass until the work has ended.</summary>
    public async Task PassUntilAsync(Task work)
    {
        while (await Task.WhenAny(work, SomebodyWaitsAsync()) is Task<TimeSpan> wait && wait != work)
            Advance(await wait);
        await work;
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = base.CreateTimer(callback, state, dueTime, period);
        Begin(dueTime);
        return new ToldTimer(timer, this);
    }

    private void Begin(TimeSpan wait)
    {
        if (wait >= Answers)
            _forAnswer = wait;
        else if (wait > TimeSpan.Zero)
            _begun.Writer.TryWrite(wait);
    }

    // Time-outs are set anew. Told of only once they are: the test lets the time pass at once.
    private sealed class ToldTimer(ITimer timer, TimerSignals time) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            var changed = timer.Change(dueTime, period);
            time.Begin(dueTime);
            return changed;
        }

        public void Dispose() => timer.Dispose();

        public ValueTask DisposeAsync() => timer.DisposeAsync();
    }
}
