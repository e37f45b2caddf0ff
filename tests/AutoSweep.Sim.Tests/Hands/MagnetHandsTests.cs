using System.Threading.Channels;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Hands;

/// <summary>The hands at the magnets: over the meter's display alone.</summary>
public sealed class MagnetHandsTests : IDisposable
{
    private static readonly RodDefinition Rod = new() { GapMillimetres = 0.3, DecibelsPerMillimetre = 20, BacklashMillimetres = 0, LockingMillimetres = 0 };

    private readonly Channel<HandsEvent> events = Channel.CreateUnbounded<HandsEvent>();
    private readonly CancellationTokenSource end = new();
    private readonly SimulatedBench bench;
    private readonly MagnetHands hands;

    public MagnetHandsTests()
    {
        var quiet = TestBench.Quiet(TestBench.Small());
        // So fast that no wait takes real time.
        bench = new(quiet with { Outputs = [.. quiet.Outputs.Select(output => output with { Rod = Rod })] }, TestBench.Profile, new SimulatedClock(1e6));
        hands = new(HandsBench.Script([], []), bench, told => events.Writer.TryWrite(told), seed: 1);
        _ = hands.RunAsync(last: false, end.Token);
    }

    [Fact]
    public async Task They_clip_what_the_display_names_and_go_when_it_says_so()
    {
        hands.Read("CLIP 3");
        Assert.Equal(3, (await NextAsync("clip")).Output);
        hands.Read("CLIP 5");
        Assert.Equal(3, (await NextAsync("unclip")).Output);
        Assert.Equal(5, (await NextAsync("clip")).Output);
        hands.Read("DONE");
        await NextAsync("end");
    }

    [Fact]
    public async Task They_move_a_rod_about_as_far_as_they_are_told()
    {
        hands.Read("CLIP 3");
        await NextAsync("clip");
        var before = await LevelAsync();
        hands.Read("3 OUT 0.100");
        Assert.Equal("0.100", (await NextAsync("move")).Note);
        await NextAsync("lock");

        // 20 dB/mm: 2 dB, with a hand that is 20 % off at 0.12 mm out and 0.02 mm back; four standard deviations.
        Assert.InRange(20 * Math.Log10(await LevelAsync() / before), -2 - 2, -0.1);
    }

    [Fact]
    public async Task A_rod_that_they_push_into_the_wheel_is_told_and_its_tone_is_gone()
    {
        hands.Read("CLIP 3");
        await NextAsync("clip");
        hands.Read("3 IN 0.900");
        Assert.Equal(3, (await NextAsync("contact")).Output);
        await NextAsync("lock");
        hands.Read("3 OUT 0.900");
        await NextAsync("lock");

        Assert.True(await LevelAsync() < 1e-5);
    }

    public void Dispose()
    {
        end.Cancel();
        end.Dispose();
    }

    private async Task<double> LevelAsync()
    {
        await bench.Clock.WaitUntilAsync(bench.Clock.Now + TimeSpan.FromSeconds(20), CancellationToken.None);
        return bench.Look(bench.Clock.Now, view => view.Signal.Volts);
    }

    private async Task<HandsEvent> NextAsync(string what)
    {
        while (true)
        {
            var told = await events.Reader.ReadAsync().AsTask().WaitAsync(Patience.Limit, TimeProvider.System);
            if (told.Event == what) return told;
        }
    }
}
