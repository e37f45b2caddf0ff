using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Meter;

/// <summary>The counter: right when well fed, not to be trusted below 10 mV or under hum (common practice, no source).</summary>
public class FrequencyCounterTests
{
    private const double Tone = 1046.2;

    [Fact]
    public void A_strong_tone_is_counted_within_the_gates_resolution()
    {
        foreach (var counted in Counts(tone: 0.1, hum: 0.001))
            Assert.InRange(counted, Tone * (1 - 1e-5), Tone * (1 + 1e-5));
    }

    [Fact]
    public void A_few_millivolts_are_often_miscounted_and_sometimes_right()
    {
        var counts = Counts(tone: 0.006, hum: 0.0002).ToList();
        var right = counts.Count(counted => Math.Abs(counted - Tone) < 0.1);
        Assert.InRange(right, 40, 160);
        Assert.Contains(0, counts);
    }

    [Fact]
    public void Next_to_nothing_gives_zero() => Assert.All(Counts(tone: 0.001, hum: 0.0005), counted => Assert.Equal(0, counted));

    [Fact]
    public void Hum_alone_gives_the_mains_or_a_multiple() =>
        Assert.All(Counts(tone: 0, hum: 0.05), counted => Assert.Contains(counted, new[] { 60.0, 120, 180 }));

    [Fact]
    public void Hum_of_half_the_tone_spoils_part_of_the_counts() =>
        Assert.InRange(Counts(tone: 0.1, hum: 0.05).Count(counted => Math.Abs(counted - Tone) < 0.1), 60, 140);

    [Fact]
    public void A_contact_that_changed_within_the_gate_loses_crossings() =>
        Assert.All(Counts(tone: 0.1, hum: 0, sinceSeconds: 0.02), counted => Assert.InRange(counted, 0.1 * Tone, 0.3 * Tone));

    private static IEnumerable<double> Counts(double tone, double hum, double sinceSeconds = 10)
    {
        var random = new Random(5);
        var counter = new FrequencyCounter(TestBench.Small().Meter);
        var signal = new InputSignal { ToneVolts = tone, ToneHertz = Tone, HumVolts = hum, HumHertz = 60 };
        return Enumerable.Range(0, 200).Select(_ => counter.Count(
            new(TimeSpan.FromSeconds(20), signal, signal.Volts, 0.1, TimeSpan.FromSeconds(sinceSeconds), random), 0.1, 0.1));
    }
}
