using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Physics;

/// <summary>What terminals give, with faults and at another mains frequency.</summary>
public class GeneratorModelTests
{
    private static readonly GeneratorModel.Conditions Nominal = new(60, 1);

    [Fact]
    public void Tone_and_emf_follow_the_mains()
    {
        var (slow, fast) = (Plain(new(60, 1)), Plain(new(60.6, 1)));
        Assert.Equal(1.01, fast.ToneHertz / slow.ToneHertz, 1e-12);
        Assert.Equal(1.01, fast.ToneVolts / slow.ToneVolts, 1e-4);
    }

    [Fact]
    public void The_tuned_capacitance_goes_with_the_inverse_square_of_the_mains_frequency()
    {
        var bench = TestBench.Small();
        var model = Model(bench);
        var number = bench.Outputs.First(output => output.Filter is { Arrangement: Arrangement.Series }).Number;
        var peaks = new[] { 60, 60.12 }
            .Select(mains => model.Network(number).Response(model.ToneHertz(number, mains), 0).Peak()!.Value.Farads).ToList();

        // +0.2 % of mains is 0.4 % less capacitance (trade data, computed from C = 1/(w^2 L)).
        Assert.Equal(Math.Pow(1.002, -2), peaks[1] / peaks[0], 1e-5);
    }

    [Fact]
    public void A_dead_output_gives_neither_tone_nor_hum()
    {
        var signal = At(1, new PlantedFault { Output = 1, Kind = FaultKind.Dead });
        Assert.Equal((0, 0, 0), (signal.ToneVolts, signal.HumVolts, signal.CrosstalkVolts));
    }

    [Fact]
    public void An_output_of_hum_only_has_its_hum_left()
    {
        var signal = At(1, new PlantedFault { Output = 1, Kind = FaultKind.HumOnly });
        Assert.Equal(0, signal.ToneVolts);
        Assert.True(signal.HumVolts > 0);
    }

    [Fact]
    public void Swapped_terminals_give_each_others_tone()
    {
        var fault = new PlantedFault { Output = 1, Kind = FaultKind.Swapped, Partner = 2 };
        Assert.Equal(At(2).ToneHertz, At(1, fault).ToneHertz);
        Assert.Equal(At(1).ToneHertz, At(2, fault).ToneHertz);
    }

    [Fact]
    public void Parts_of_a_signal_add_in_quadrature() =>
        Assert.Equal(13, new InputSignal { ToneVolts = 12, HumVolts = 3, CrosstalkVolts = 4 }.Volts, 1e-12);

    [Fact]
    public void Crosstalk_passes_the_outputs_own_filter()
    {
        var demo = BenchFile.Read(BenchLocator.Bench("demo"));
        var model = new GeneratorModel(demo, Core.Generator.GeneratorProfileLibrary.Open(demo.Profile));
        var series = demo.Outputs.First(output => output is { Crosstalk: not null, Filter.Arrangement: Arrangement.Series });
        var leak = series.Crosstalk!.Percent / 100 * model.Output(series.Crosstalk.FromOutput).Source.EmfMillivolts * 1e-3;
        var peak = demo.Truth.Outputs.Single(truth => truth.Output == series.Number).Peak!;
        var heard = model.At(series.Number, peak.Picofarads * 1e-12, 0, Nominal);
        Assert.InRange(heard.CrosstalkVolts, 1e-12, 0.2 * leak);
    }

    private static InputSignal Plain(GeneratorModel.Conditions now) => Model(TestBench.Small()).At(1, 0, 0, now);

    private static InputSignal At(int terminal, params PlantedFault[] faults) =>
        Model(TestBench.Small() with { Faults = faults }).At(terminal, 0, 0, Nominal);

    private static GeneratorModel Model(BenchDefinition bench) => new(bench, TestBench.Profile);
}
