using System.Threading.Channels;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.CapacitanceMeter;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Hands;

/// <summary>The hands at the LCR meter's clips: they take parts in one by one, and clip the pairs that its display asks for.</summary>
/// <remarks>
/// Taking in: a part on the clips, wait for the LCR meter's beep, off, the next; each part that was beeped for gets the next running
/// number, which is all that the hands know of it. Fitting: when the meter's display names parts (<c>DISP:LINE "61: P00017 + P00022"</c>),
/// they are clipped in parallel until the meter beeps or its display changes, and soldered in at output 61. The hands need not know
/// what a beep meant: parts that were not good are replaced by the next that the display names for the same output.
/// Old ones: when the display says <c>61: OLD</c>, in either phase, the capacitor that came off output 61 goes on the clips until the meter beeps or its
/// display changes; nothing else is clipped until it asks for no more of them.
/// </remarks>
internal sealed class PartHands
{
    // Where nobody takes readings there is nothing to be seen.
    private static readonly TimeSpan LongestGlance = TimeSpan.FromSeconds(1);

    private readonly HandsDefinition script;
    private readonly CapacitanceClips clips;
    private readonly SimulatedBench bench;
    private readonly BeepEar ear;
    private readonly SimulatedClock clock;
    private readonly Action<HandsEvent> tell;
    private readonly Random random;
    private readonly Channel<string> display = Channel.CreateUnbounded<string>();
    // Null where the display asks for no more of them.
    private readonly Channel<int?> olds = Channel.CreateUnbounded<int?>();
    private bool asksForOlds;
    private readonly List<int> stickers = [];

    public PartHands(
        HandsDefinition script, CapacitanceClips clips, BeepEar ear, SimulatedBench bench, Action<HandsEvent> tell, int seed)
    {
        (this.script, this.clips, this.ear, this.bench, this.tell) = (script, clips, ear, bench, tell);
        clock = bench.Clock;
        random = new(seed);
    }

    /// <summary>The meter's display shows another text.</summary>
    public void Read(string text)
    {
        var order = FitOrder.Read(text);
        var isEndOfOlds = asksForOlds && !order.IsOld;
        if (order.IsOld) olds.Writer.TryWrite(order.Output);
        if (isEndOfOlds) olds.Writer.TryWrite(null);
        // That the old ones are done says nothing of the fitting.
        if (!order.IsOld && !(isEndOfOlds && text == FitOrder.Over)) display.Writer.TryWrite(text);
        asksForOlds = order.IsOld;
    }

    /// <summary>Takes in or fits.</summary>
    /// <param name="phase">Which of the two.</param>
    /// <param name="last">Whether no phase follows: then fitting goes on until the bench is taken down, whatever the display says.</param>
    /// <param name="cancellationToken">Takes the bench down.</param>
    public async Task RunAsync(HandsPhase phase, bool last, CancellationToken cancellationToken)
    {
        clips.TakeOff();
        Tell("begin", phase);
        if (phase == HandsPhase.Parts) await TakeInAsync(cancellationToken);
        else await FitAsync(last, cancellationToken);
        Tell("end", phase);
    }

    private async Task TakeInAsync(CancellationToken cancellationToken)
    {
        List<int> left = [.. Enumerable.Range(1, clips.PartCount)];
        for (var round = 1; round <= BenchHands.Rounds && left.Count > 0; round++)
        {
            var unanswered = new List<int>();
            foreach (var part in left)
            {
                if (await TakeInAsync(part, cancellationToken)) stickers.Add(part);
                else unanswered.Add(part);
            }

            left = unanswered;
        }
    }

    private async Task<bool> TakeInAsync(int part, CancellationToken cancellationToken)
    {
        await OldsAsync(HandsPhase.Parts, cancellationToken);
        await EmptyAsync(cancellationToken);
        // Listening begins before the part is on: on a fast clock the beep may follow at once.
        var over = BeepOrAsync(olds.Reader, cancellationToken);
        clips.Put([part]);
        Tell("clip", HandsPhase.Parts, part);
        var (answered, _) = await over;
        Tell(answered ? "beep" : "noBeep", HandsPhase.Parts, part);
        await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), clock, cancellationToken);
        clips.TakeOff();
        Tell("unclip", HandsPhase.Parts, part);
        return answered;
    }

    private async Task FitAsync(bool last, CancellationToken cancellationToken)
    {
        while (true)
        {
            await OrderAsync(cancellationToken);
            await OldsAsync(HandsPhase.Fit, cancellationToken);
            if (!display.Reader.TryRead(out var text)) continue;
            if (!last && text == FitOrder.Over) return;
            var order = FitOrder.Read(text);
            if (order.Parts.Count > 0) await FitAsync(order.Output, [.. order.Parts.Select(InDrawer)], cancellationToken);
        }
    }

    private async Task OldsAsync(HandsPhase phase, CancellationToken cancellationToken)
    {
        if (!olds.Reader.TryPeek(out _)) return;
        while (await olds.Reader.ReadAsync(cancellationToken) is { } output)
        {
            for (var answered = false; !answered;)
            {
                await EmptyAsync(cancellationToken);
                var over = BeepOrAsync(olds.Reader, cancellationToken);
                clips.PutOld(output);
                Tell("clip", phase, output: output, note: "old");
                answered = await over is (true, _) or (_, true);
                await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), clock, cancellationToken);
                clips.TakeOff();
                Tell("unclip", phase, output: output);
            }
        }
    }

    private async Task FitAsync(int? output, int[] parts, CancellationToken cancellationToken)
    {
        // A pair that nobody beeps for is lifted and clipped once more, as anybody would.
        for (var answered = false; !answered;)
        {
            await EmptyAsync(cancellationToken);
            var over = BeepOrAsync(display.Reader, cancellationToken);
            clips.Put(parts);
            Tell("clip", HandsPhase.Fit, output: output, note: string.Join('+', parts));
            answered = await over is (true, _) or (_, true);
            await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), clock, cancellationToken);
            if (answered && output is { } terminal) bench.Solder(terminal, clips.Parts);
            clips.TakeOff();
            Tell("unclip", HandsPhase.Fit, output: output);
        }
    }

    // Neither when patience ran out first.
    private async Task<(bool Beep, bool Order)> BeepOrAsync<T>(ChannelReader<T> orders, CancellationToken cancellationToken)
    {
        using var first = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var beep = ear.ListenAsync(script.PatienceOn(clock), clock, first.Token);
        var order = orders.WaitToReadAsync(first.Token).AsTask();
        await Task.WhenAny(beep, order);
        await first.CancelAsync();
        await ((Task)Task.WhenAll(beep, order)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        cancellationToken.ThrowIfCancellationRequested();
        return (beep.IsCompletedSuccessfully && beep.Result, order.IsCompletedSuccessfully);
    }

    // Until the display asks for parts, or for an old capacitor.
    private async Task OrderAsync(CancellationToken cancellationToken)
    {
        using var first = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var (text, old) = (display.Reader.WaitToReadAsync(first.Token).AsTask(), olds.Reader.WaitToReadAsync(first.Token).AsTask());
        await Task.WhenAny(text, old);
        await first.CancelAsync();
        await ((Task)Task.WhenAll(text, old)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        cancellationToken.ThrowIfCancellationRequested();
    }

    // A running number of this session's taking in; without one, the part's place in the drawer.
    private int InDrawer(int number) =>
        stickers.Count == 0 ? number : number >= 1 && number <= stickers.Count ? stickers[number - 1] : 0;

    // Between two parts the clips stay empty until the meter, which the hands have before their eyes, shows it: a worker that tells parts apart by
    // the empty clips has then had the chance to see them so, however busy the machine is.
    private async Task EmptyAsync(CancellationToken cancellationToken)
    {
        var shown = clips.ShownEmpty;
        await Task.Delay(TimeSpan.FromSeconds(script.PauseSeconds * (1 + random.NextDouble())), clock, cancellationToken);
        await Task.WhenAny(shown, Task.Delay(LongestGlance * clock.Rate, clock, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
    }

    private void Tell(string what, HandsPhase phase, int? part = null, int? output = null, string? note = null) =>
        tell(new(clock.Now.TotalSeconds, what, phase, output, note, part));
}
