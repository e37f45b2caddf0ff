using System.Threading.Channels;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>Hands at work on a clock that moves only while the test waits for what they do.</summary>
internal sealed class HandsBench : IDisposable
{
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(1);

    /// <summary>Real time in which the hands may finish what they are at before the clock moves on.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(1);

    private readonly WaitedTime real = new();
    private readonly Channel<HandsEvent> events = Channel.CreateUnbounded<HandsEvent>();
    private readonly CancellationTokenSource end = new();

    public HandsBench(HandsDefinition script, params HandsPhase[] phases)
    {
        Bench = new(TestBench.Quiet(TestBench.Small()), TestBench.Profile, new SimulatedClock(1, real));
        _ = new BenchHands(script, Bench, Ear, Take, seed: 1).RunAsync(phases, end.Token);
    }

    public SimulatedBench Bench { get; }

    public BeepEar Ear { get; } = new();

    /// <summary>Whether the meter beeps as soon as a clip is on.</summary>
    public bool BeepsAtOnce { get; set; }

    /// <summary>A script of plain steps.</summary>
    public static HandsDefinition Script(int[] survey, int[] sweep) => new()
    {
        PauseSeconds = 1.5, ReactionSeconds = 0.5, PatienceSeconds = 120, Survey = Steps(survey), Sweep = Steps(sweep),
    };

    public void Beep() => Ear.Hear(Bench.Clock.Now);

    /// <summary>Lets time pass until the hands have done something, and only while they wait for it: hands that are slow to come round on a busy
    /// machine are not late.</summary>
    public async Task<HandsEvent> NextAsync()
    {
        for (var i = 0; i < 2_000; i++)
        {
            if (events.Reader.TryRead(out var told)) return told;
            await Task.WhenAny(events.Reader.WaitToReadAsync().AsTask(), real.SomebodyWaits).WaitAsync(Patience.Limit, TimeProvider.System);
            await PassAsync();
        }

        throw new TimeoutException("The hands did nothing for 2000 s.");
    }

    public async Task<HandsEvent> NextAsync(string what)
    {
        var told = await NextAsync();
        while (told.Event != what) told = await NextAsync();
        return told;
    }

    /// <summary>Whether the hands keep still for so many seconds.</summary>
    public async Task<bool> StillForAsync(double seconds)
    {
        for (var until = Bench.Clock.Now + TimeSpan.FromSeconds(seconds); Bench.Clock.Now < until; await PassAsync())
        {
            if (events.Reader.TryPeek(out _)) return false;
        }

        return true;
    }

    private void Take(HandsEvent told)
    {
        if (BeepsAtOnce && told.Event == "clip") Beep();
        events.Writer.TryWrite(told);
    }

    // On a thread of the pool, because there what waits for the clock goes on before Advance returns.
    private async Task PassAsync()
    {
        await Task.WhenAny(events.Reader.WaitToReadAsync().AsTask(), Task.Delay(Grace, TimeProvider.System));
        if (!events.Reader.TryPeek(out _)) await Task.Run(() => real.Advance(Step));
    }

    public void Dispose()
    {
        end.Cancel();
        end.Dispose();
    }

    private static HandsStep[] Steps(int[] outputs) => [.. outputs.Select(output => new HandsStep { Output = output })];
}
