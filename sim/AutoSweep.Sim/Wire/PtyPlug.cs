using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Wire;

/// <summary>A serial line that can be unplugged and comes back under the same name, as a USB adapter's by-id name does.</summary>
/// <remarks>The name is a link to one pseudo-terminal after the other. The instrument behind it stays on all the time.</remarks>
internal sealed class PtyPlug : IDisposable
{
    private readonly IInstrument instrument;
    private readonly SimulatedClock clock;
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("autosweep-sim-");
    private readonly Lock gate = new();
    private PtyLine line;
    private CancellationTokenSource pulled = new();
    private TaskCompletionSource pushedIn = new();
    private TimeSpan gap;

    public PtyPlug(IInstrument instrument, SimulatedClock clock)
    {
        (this.instrument, this.clock) = (instrument, clock);
        line = PlugIn();
    }

    /// <summary>The name that returns.</summary>
    public string Path => System.IO.Path.Combine(folder.FullName, "fixture");

    public string Resource => $"ASRL{Path}::INSTR";

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            await TalkAsync(cancellationToken);
            File.Delete(Path);
            line.Dispose();
            await Task.WhenAny(Task.Delay(gap, clock, cancellationToken), pushedIn.Task);
            cancellationToken.ThrowIfCancellationRequested();
            lock (gate) (pulled, line) = (new(), PlugIn());
        }
    }

    /// <summary>Pulls the plug for a while, or until it is pushed in; nothing happens while it is out already.</summary>
    public void Unplug(TimeSpan forHowLong)
    {
        lock (gate)
        {
            if (pulled.IsCancellationRequested) return;
            (gap, pushedIn) = (forHowLong, new(TaskCreationOptions.RunContinuationsAsynchronously));
            pulled.Cancel();
        }
    }

    /// <summary>Pushes the plug in again before its time; nothing happens while it is in.</summary>
    public void PushIn()
    {
        lock (gate) pushedIn.TrySetResult();
    }

    public void Dispose()
    {
        line.Dispose();
        pulled.Dispose();
        folder.Delete(recursive: true);
    }

    // Until the plug is pulled.
    private async Task TalkAsync(CancellationToken cancellationToken)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, pulled.Token);
        var talk = new Conversation(line, instrument, new(line, new(), clock)).RunAsync(end.Token);
        await talk.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        cancellationToken.ThrowIfCancellationRequested();
        if (!pulled.IsCancellationRequested) await talk;
    }

    private PtyLine PlugIn()
    {
        var plugged = new PtyLine();
        File.CreateSymbolicLink(Path, plugged.Path);
        return plugged;
    }
}
