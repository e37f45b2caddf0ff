using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Making;

/// <summary>Works out the true answers of a bench from its networks, at nominal mains and after warm-up.</summary>
internal static class OutputTruths
{
    public static BenchTruth Of(BenchDefinition bench, GeneratorProfile profile)
    {
        var generator = new GeneratorModel(bench, profile);
        return new()
        {
            Outputs = [.. bench.Outputs.Select(output => Of(output.Number, bench, generator))],
            Faults = bench.Faults,
        };
    }

    private static OutputTruth Of(int terminal, BenchDefinition bench, GeneratorModel generator)
    {
        var number = generator.WiredTo(terminal);
        var output = generator.Output(number);
        var aged = output.Aged is { } old
            ? generator.At(terminal, old.Picofarads * 1e-12, old.LossTangent, new(bench.Mains.Hertz, 1))
            : generator.At(terminal, 0, 0, new(bench.Mains.Hertz, 1));
        return new()
        {
            Output = terminal,
            ToneHertz = Math.Round(aged.ToneHertz, 4),
            AsFoundMillivolts = Math.Round(aged.ToneVolts * 1e3, 5),
            Peak = output.Filter is { } filter ? Peak(output, filter, aged.ToneHertz, bench, generator) : null,
        };
    }

    private static PeakTruth Peak(
        OutputDefinition output, FilterDefinition filter, double hertz, BenchDefinition bench, GeneratorModel generator)
    {
        var peak = generator.Network(output.Number).Response(hertz, bench.Fixture.LossTangent).Peak()
            ?? throw new InvalidOperationException($"Output {output.Number} has no peak.");
        return new()
        {
            Picofarads = Math.Round(peak.Farads * 1e12, 1),
            HalfWidthPicofarads = Math.Round(peak.HalfWidthFarads * 1e12, 1),
            Q = Math.Round(Q(filter.Arrangement, peak), 3),
            Millivolts = Math.Round(peak.Gain * output.Source.EmfMillivolts, 5),
        };
    }

    /// <summary>Place over half-width, in 1/C for the series arrangement, where the half-power points lie evenly, else in C.</summary>
    public static double Q(Arrangement arrangement, ResponsePeak peak) =>
        arrangement == Arrangement.Series && peak is { LowerFarads: { } lower, UpperFarads: { } upper }
            ? 2 / (peak.Farads * ((1 / lower) - (1 / upper)))
            : peak.Farads / peak.HalfWidthFarads;
}
