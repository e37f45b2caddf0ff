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
            await Task.Delay(gap, clock, cancellationToken);
            lock (gate) (pulled, line) = (new(), PlugIn());
        }
    }

    /// <summary>Pulls the plug for a while; nothing happens while it is out already.</summary>
    public void Unplug(TimeSpan forHowLong)
    {
        lock (gate)
        {
            if (pulled.IsCancellationRequested) return;
            gap = forHowLong;
            pulled.Cancel();
        }
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
