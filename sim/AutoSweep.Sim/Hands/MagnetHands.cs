using System.Globalization;
using System.Threading.Channels;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Hands;

/// <summary>The hands at the magnets: they clip and move what the level meter's display asks for.</summary>
/// <remarks>
/// <c>CLIP 61</c> makes them clip output 61; <c>61 OUT 0.300</c> makes them loosen its rod, pull it a little too far, push it back to where it should be, and
/// lock it; <c>61 IN 0.100</c> makes them push it straight in. They need no beep: what they have done is heard in the level. How well they do it is invented;
/// no page was found that measures hands.
/// </remarks>
internal sealed class MagnetHands
{
    /// <summary>To loosen a screw, to push once, to lock.</summary>
    private static readonly TimeSpan OneGrip = TimeSpan.FromSeconds(2);

    private readonly HandsDefinition script;
    private readonly SimulatedBench bench;
    private readonly Action<HandsEvent> tell;
    private readonly Random random;
    private readonly RodGrip grip;
    private readonly Channel<string> display = Channel.CreateUnbounded<string>();
    private int? clipped;

    public MagnetHands(HandsDefinition script, SimulatedBench bench, Action<HandsEvent> tell, int seed)
    {
        (this.script, this.bench, this.tell, random) = (script, bench, tell, new(seed));
        grip = new(random);
    }

    /// <summary>The meter's display shows another text.</summary>
    public void Read(string text) => display.Writer.TryWrite(text);

    /// <summary>Follows the display.</summary>
    /// <param name="last">Whether no phase follows: then they go on until the bench is taken down, whatever the display says.</param>
    /// <param name="cancellationToken">Takes the bench down.</param>
    public async Task RunAsync(bool last, CancellationToken cancellationToken)
    {
        Tell("begin");
        while (await display.Reader.ReadAsync(cancellationToken) is var text && (last || text != RodOrder.Over))
        {
            if (RodOrder.Read(text) is not { } order) continue;
            if (order.OutwardMillimetres is { } outward) await MoveAsync(order.Output, outward, cancellationToken);
            else await ClipAsync(order.Output, cancellationToken);
        }

        TakeOff();
        Tell("end");
    }

    private async Task ClipAsync(int output, CancellationToken cancellationToken)
    {
        if (clipped == output) return;
        TakeOff();
        await WaitAsync(TimeSpan.FromSeconds(script.PauseSeconds * (1 + random.NextDouble())), cancellationToken);
        bench.Clip(output, withFixture: false);
        clipped = output;
        Tell("clip", output);
    }

    private void TakeOff()
    {
        if (clipped is not { } output) return;
        bench.Unclip();
        clipped = null;
        Tell("unclip", output);
    }

    private async Task MoveAsync(int output, double outward, CancellationToken cancellationToken)
    {
        await WaitAsync(TimeSpan.FromSeconds(script.ReactionSeconds) + OneGrip, cancellationToken);
        Tell("move", output, outward.ToString("0.000", CultureInfo.InvariantCulture));
        foreach (var wanted in RodGrip.Wanted(outward)) await PushAsync(output, wanted, cancellationToken);
        bench.LockRod(output, grip.LockShift());
        Tell("lock", output);
    }

    private async Task PushAsync(int output, double outward, CancellationToken cancellationToken)
    {
        if (bench.PushRod(output, grip.Made(outward))) Tell("contact", output);
        await WaitAsync(OneGrip, cancellationToken);
    }

    private Task WaitAsync(TimeSpan time, CancellationToken cancellationToken) => Task.Delay(time, bench.Clock, cancellationToken);

    private void Tell(string what, int? output = null, string? note = null) =>
        tell(new(bench.Clock.Now.TotalSeconds, what, HandsPhase.Level, output, note));
}
