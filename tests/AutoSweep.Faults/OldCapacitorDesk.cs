using AutoSweep.Core.Stock;
using AutoSweep.Sim.Benches;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Faults;

/// <summary>The old capacitors at the bench's LCR meter, once they are off: C and D with the simulated meter's own errors.</summary>
internal static class OldCapacitorDesk
{
    // Below this an LCR meter at 1 kHz shows leads and stray: the person logs that it measures as no capacitor any more.
    private const double NoCapacitorPicofarads = 1000;

    public static IReadOnlyDictionary<int, OldCapacitorRemoved> Measure(BenchDefinition bench)
    {
        var random = new Random(bench.Seed + 3);
        return bench.Outputs.Where(output => output.Aged is not null)
            .ToDictionary(output => output.Number, output => Measure(output, bench.CapacitanceMeter, random));
    }

    private static OldCapacitorRemoved Measure(OutputDefinition output, CapacitanceMeterDefinition meter, Random random)
    {
        var shown = (output.Aged!.Picofarads * (1 + (meter.GainErrorPercent / 100)) * (1 + (meter.NoisePercentOfReading / 100 * Gauss(random))))
            + (meter.NoisePicofarads * Gauss(random));
        var dissipation = output.Aged.LossTangent + (meter.DissipationNoise * Gauss(random));
        return new("rehearsal", output.Number, shown < NoCapacitorPicofarads ? null
            : new((long)Math.Round(shown), 0, DateTimeOffset.UnixEpoch, Math.Round(Math.Max(0, dissipation), 4)));
    }

    private static double Gauss(Random random) => Normal.Sample(random, 0, 1);
}
