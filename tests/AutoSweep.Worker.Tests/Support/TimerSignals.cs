using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A told time that says when somebody has begun to wait: only then may a test let it pass.</summary>
internal sealed class TimerSignals : FakeTimeProvider
{
    // Real time; a test that hangs fails instead.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly Channel<TimeSpan> _begun = Channel.CreateUnbounded<TimeSpan>();

    /// <summary>Waits until somebody waits; how long.</summary>
    public Task<TimeSpan> SomebodyWaitsAsync() => _begun.Reader.ReadAsync().AsTask().WaitAsync(Patience, System);

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
        if (dueTime > TimeSpan.Zero)
            _begun.Writer.TryWrite(dueTime);
        return timer;
    }
}
