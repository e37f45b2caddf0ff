using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Physics;

/// <summary>What is soldered in decides the level, and nothing else that was in the filter before.</summary>
public class SolderedPartsTests
{
    private const int Output = 9;

    private static readonly PartDefinition[] Parts =
    [
        new() { NominalPicofarads = 100_000, TolerancePercent = 5, Picofarads = 101_230, LossTangent = 0.001 },
        new() { NominalPicofarads = 47_000, TolerancePercent = 5, Picofarads = 46_500, LossTangent = 0.02 },
    ];

    // Capacitors in parallel: C = C1 + C2, D = (C1 D1 + C2 D2) / C (textbook; worked by hand for the parts above).
    private static readonly AgedCapacitorDefinition Together = new() { Picofarads = 147_730, LossTangent = 0.00698057 };

    [Fact]
    public void Parts_in_parallel_give_the_level_of_one_capacitor_of_their_sum()
    {
        using var one = new TestBench(bench => With(TestBench.Quiet(bench), Together));
        using var two = new TestBench(TestBench.Quiet);
        two.Bench.Solder(Output, Parts);
        var (expected, level) = (Volts(one.Bench), Volts(two.Bench));
        Assert.Equal(expected, level, expected * 1e-6);
        using var aged = new TestBench(TestBench.Quiet);
        Assert.NotEqual(expected, Volts(aged.Bench), expected * 1e-2);
    }

    [Fact]
    public void They_stand_where_the_fixture_was_clipped_before()
    {
        using var never = new TestBench(TestBench.Quiet);
        using var before = new TestBench(TestBench.Quiet);
        before.Bench.Clip(Output, withFixture: true);
        before.Bench.Unclip();
        before.Bench.Solder(Output, Parts);
        never.Bench.Solder(Output, Parts);
        Assert.Equal(Volts(never.Bench), Volts(before.Bench), 1e-12);
    }

    [Fact]
    public void The_parts_that_come_last_stay_and_outputs_are_told_in_ascending_number()
    {
        using var last = new TestBench(TestBench.Quiet);
        using var only = new TestBench(TestBench.Quiet);
        last.Bench.Solder(14, Parts);
        last.Bench.Solder(Output, Parts);
        last.Bench.Solder(Output, [Parts[1]]);
        only.Bench.Solder(Output, [Parts[1]]);
        Assert.Equal([Output, 14], last.Bench.Soldered);
        Assert.Equal(Volts(only.Bench), Volts(last.Bench), 1e-12);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(999)]
    public void There_is_nothing_to_solder_to_without_a_filter(int output)
    {
        using var bench = new TestBench();
        bench.Bench.Solder(output, Parts);
        bench.Bench.Solder(Output, []);
        Assert.Empty(bench.Bench.Soldered);
    }

    private static BenchDefinition With(BenchDefinition bench, AgedCapacitorDefinition capacitor) => bench with
    {
        Outputs = [.. bench.Outputs.Select(output => output.Number == Output ? output with { Aged = capacitor } : output)],
    };

    private static double Volts(SimulatedBench bench)
    {
        bench.Clip(Output, withFixture: false);
        return bench.Look(bench.Clock.Now, view => view.Signal.ToneVolts);
    }
}
