using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Making;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Physics;

public class MagnetRodTests
{
    private static readonly RodDefinition Rod = new() { GapMillimetres = 0.3, DecibelsPerMillimetre = 20, BacklashMillimetres = 0.01,
        LockingMillimetres = 0.002 };

    [Fact]
    public void A_millimetre_out_costs_its_decibels_and_the_play_is_lost_at_a_turn()
    {
        var rod = new MagnetRodState(Rod);

        rod.Push(0.1);
        Assert.Equal(-2, Decibels(rod), 9);
        rod.Push(-0.05);
        Assert.Equal(-20 * 0.06, Decibels(rod), 9);
        rod.Push(-0.05);
        Assert.Equal(-20 * 0.01, Decibels(rod), 9);
        rod.Lock(0);
        Assert.Equal(-20 * 0.012, Decibels(rod), 9);
    }

    [Fact]
    public void A_rod_that_meets_the_wheel_silences_it_for_good()
    {
        var rod = new MagnetRodState(Rod);

        rod.Push(-0.29);
        Assert.False(rod.Touched);
        rod.Push(-0.02);
        Assert.True(rod.Touched);
        rod.Push(0.5);
        Assert.Equal(0, rod.Gain);
    }

    // exp(-2·pi·gap/pitch) on a two-inch wheel: 54.6 dB a pitch (the spacing loss of magnetic recording, Wallace 1951), here within the factor of two that
    // is drawn.
    [Theory]
    [InlineData(64, 21.9)]
    [InlineData(192, 65.7)]
    public void Fine_wheels_have_about_the_slope_of_the_field_law(int teeth, double law)
    {
        var slopes = Enumerable.Range(0, 200).Select(i => RodParts.Draw(teeth, new(i)).DecibelsPerMillimetre).ToList();

        Assert.All(slopes, slope => Assert.InRange(slope, 0.5 * law, 2.3 * law));
    }

    [Fact]
    public async Task The_meter_reads_what_a_push_makes_of_the_level()
    {
        using var bench = new TestBench(made => TestBench.Quiet(made) with { Outputs = [.. TestBench.Quiet(made)
            .Outputs.Select(output => output with { Rod = Rod })] });
        bench.Bench.Clip(3, withFixture: false);
        await bench.MeterAsync("CONF:VOLT:AC 1;:DET:BAND 20;:TRIG:DEL 0");
        await bench.PassAsync(5);
        var before = await LevelAsync(bench);
        bench.Bench.PushRod(3, 0.1);
        await bench.PassAsync(5);

        Assert.Equal(-2, 20 * Math.Log10(await LevelAsync(bench) / before), 0.01);
    }

    [Fact]
    public void A_bench_file_without_rods_is_read_and_nothing_moves_there()
    {
        using var bench = new TestBench(made => made with { Outputs = [.. made.Outputs.Select(output => output with { Rod = null })] });

        Assert.False(bench.Bench.PushRod(3, -10));
    }

    private static double Decibels(MagnetRodState rod) => 20 * Math.Log10(rod.Gain);

    private static async Task<double> LevelAsync(TestBench bench) =>
        double.Parse((await bench.MeterAsync("READ?"))!, System.Globalization.CultureInfo.InvariantCulture);
}
