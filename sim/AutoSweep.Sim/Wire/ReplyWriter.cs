using System.Text;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;

namespace AutoSweep.Sim.Wire;

/// <summary>Sends replies in order, with the wire's planted trouble.</summary>
internal sealed class ReplyWriter(IByteStream stream, WireDefinition wire, SimulatedClock clock)
{
    private const int FragmentLength = 3;
    private Task last = Task.CompletedTask;
    private int replies;

    /// <summary>Sends a reply; a late one is sent later while other messages go on.</summary>
    public async ValueTask SendAsync(string reply, CancellationToken cancellationToken)
    {
        if (wire.Silent) return;
        var bytes = Encoding.ASCII.GetBytes(reply + (wire.CarriageReturn ? "\r\n" : "\n"));
        var late = wire.LateEvery > 0 && ++replies % wire.LateEvery == 0;
        if (last.IsCompleted && !late)
        {
            await WriteAsync(bytes, cancellationToken);
            return;
        }

        last = AfterAsync(last, late ? TimeSpan.FromSeconds(wire.LateSeconds) : TimeSpan.Zero, bytes, cancellationToken);
    }

    private async Task AfterAsync(Task before, TimeSpan delay, byte[] bytes, CancellationToken cancellationToken)
    {
        await before.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await Task.Delay(delay, clock, cancellationToken);
        await WriteAsync(bytes, cancellationToken);
    }

    private async ValueTask WriteAsync(byte[] bytes, CancellationToken cancellationToken)
    {
        if (!wire.Fragmented)
        {
            await stream.WriteAsync(bytes, cancellationToken);
            return;
        }

        for (var start = 0; start < bytes.Length; start += FragmentLength)
        {
            await stream.WriteAsync(bytes.AsMemory(start, Math.Min(FragmentLength, bytes.Length - start)), cancellationToken);
            await Task.Yield();
        }
    }
}
