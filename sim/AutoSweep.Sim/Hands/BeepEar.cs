namespace AutoSweep.Sim.Hands;

/// <summary>The hands' ear: a beep of the meter is the only thing that a worker can tell them.</summary>
internal sealed class BeepEar
{
    /// <summary>Beeps closer together than this are one signal.</summary>
    public static readonly TimeSpan OneSignal = TimeSpan.FromSeconds(2);

    private readonly Lock gate = new();
    private TaskCompletionSource? waiting;
    private TaskCompletionSource clientsChanged = New();
    private TimeSpan lastBeep = TimeSpan.MinValue;
    private int clients;
    private bool told;

    /// <summary>The meter's display shows another text: <c>WAIT</c> and what is missing means that the clip stays where it is, whatever beeps.</summary>
    public void Read(string text)
    {
        lock (gate) told = text.StartsWith("WAIT", StringComparison.Ordinal);
    }

    /// <summary>The meter has beeped.</summary>
    public void Hear(TimeSpan when)
    {
        lock (gate)
        {
            var sameSignal = lastBeep != TimeSpan.MinValue && when - lastBeep < OneSignal;
            lastBeep = when;
            if (!sameSignal && !told) waiting?.TrySetResult();
        }
    }

    /// <summary>A worker has come to the meter or has gone.</summary>
    public void ClientsChanged(int by)
    {
        lock (gate)
        {
            clients += by;
            clientsChanged.TrySetResult();
            clientsChanged = New();
        }
    }

    /// <summary>Listens for a signal from now on. Patience runs only while a worker is there, and anew when one comes.</summary>
    /// <returns>Whether there was a signal.</returns>
    public async Task<bool> ListenAsync(TimeSpan patience, TimeProvider clock, CancellationToken cancellationToken)
    {
        var signal = Begin();
        while (true)
        {
            var (changed, present) = Clients();
            using var ending = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            var tired = Task.Delay(present ? patience : Timeout.InfiniteTimeSpan, clock, ending.Token);
            var first = await Task.WhenAny(signal, changed, tired);
            await ending.CancelAsync();
            cancellationToken.ThrowIfCancellationRequested();
            if (signal.IsCompleted) return true;
            if (first == tired) return false;
        }
    }

    private Task Begin()
    {
        lock (gate) return (waiting = New()).Task;
    }

    private (Task Changed, bool Present) Clients()
    {
        lock (gate) return (clientsChanged.Task, clients > 0);
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
