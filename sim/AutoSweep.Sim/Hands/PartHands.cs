using System.Globalization;
using System.Text.RegularExpressions;
using System.Threading.Channels;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.CapacitanceMeter;
using AutoSweep.Sim.Clock;

namespace AutoSweep.Sim.Hands;

/// <summary>The hands at the LCR meter's clips: they take parts in one by one, and clip the pairs that its display asks for.</summary>
/// <remarks>
/// Taking in: a part on the clips, wait for the LCR meter's beep, off, the next; each part that was beeped for gets the next running
/// number, which is all that the hands know of it. Fitting: when the meter's display shows numbers (<c>DISP:LINE "17 + 22"</c>), those
/// parts are clipped in parallel until the meter beeps or its display changes.
/// </remarks>
internal sealed partial class PartHands
{
    private readonly HandsDefinition script;
    private readonly CapacitanceClips clips;
    private readonly BeepEar ear;
    private readonly SimulatedClock clock;
    private readonly Action<HandsEvent> tell;
    private readonly Random random;
    private readonly Channel<string> display = Channel.CreateUnbounded<string>();
    private readonly List<int> stickers = [];

    public PartHands(
        HandsDefinition script, CapacitanceClips clips, BeepEar ear, SimulatedClock clock, Action<HandsEvent> tell, int seed)
    {
        (this.script, this.clips, this.ear, this.clock, this.tell) = (script, clips, ear, clock, tell);
        random = new(seed);
    }

    /// <summary>The meter's display shows another text.</summary>
    public void Read(string text) => display.Writer.TryWrite(text);

    public async Task RunAsync(HandsPhase phase, CancellationToken cancellationToken)
    {
        clips.TakeOff();
        Tell("begin", phase);
        if (phase == HandsPhase.Parts) await TakeInAsync(cancellationToken);
        else await FitAsync(cancellationToken);
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
        await PauseAsync(cancellationToken);
        // Listening begins before the part is on: on a fast clock the beep may follow at once.
        var beep = ear.ListenAsync(TimeSpan.FromSeconds(script.PatienceSeconds), clock, cancellationToken);
        clips.Put([part]);
        Tell("clip", HandsPhase.Parts, part);
        var answered = await beep;
        Tell(answered ? "beep" : "noBeep", HandsPhase.Parts, part);
        await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), clock, cancellationToken);
        clips.TakeOff();
        Tell("unclip", HandsPhase.Parts, part);
        return answered;
    }

    // Goes on until the bench is taken down: nobody tells the hands that the job is over.
    private async Task FitAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var wanted = Numbers(await display.Reader.ReadAsync(cancellationToken));
            if (wanted.Length == 0) continue;
            await PauseAsync(cancellationToken);
            var over = BeepOrOtherTextAsync(cancellationToken);
            clips.Put(wanted);
            Tell("clip", HandsPhase.Fit, note: string.Join('+', wanted));
            await over;
            await Task.Delay(TimeSpan.FromSeconds(script.ReactionSeconds), clock, cancellationToken);
            clips.TakeOff();
            Tell("unclip", HandsPhase.Fit);
        }
    }

    private async Task BeepOrOtherTextAsync(CancellationToken cancellationToken)
    {
        using var first = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var beep = ear.ListenAsync(Timeout.InfiniteTimeSpan, clock, first.Token);
        var text = display.Reader.WaitToReadAsync(first.Token).AsTask();
        await Task.WhenAny(beep, text);
        await first.CancelAsync();
        await ((Task)Task.WhenAll(beep, text)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        cancellationToken.ThrowIfCancellationRequested();
    }

    // The running numbers of this session's taking in; without one, the parts' order in the drawer.
    private int[] Numbers(string text) =>
    [
        .. Number().Matches(text)
            .Select(match => int.Parse(match.Value, CultureInfo.InvariantCulture))
            .Select(number => stickers.Count == 0 ? number : number >= 1 && number <= stickers.Count ? stickers[number - 1] : 0),
    ];

    private Task PauseAsync(CancellationToken cancellationToken) =>
        Task.Delay(TimeSpan.FromSeconds(script.PauseSeconds * (1 + random.NextDouble())), clock, cancellationToken);

    private void Tell(string what, HandsPhase phase, int? part = null, string? note = null) =>
        tell(new(clock.Now.TotalSeconds, what, phase, Note: note, Part: part));

    [GeneratedRegex("[0-9]{1,6}")]
    private static partial Regex Number();
}
