using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>A bench whose capacitors are as on the day when they were matched to their coils.</summary>
internal static class SoundCapacitors
{
    // Hand-matched by ear or meter, to a seventh of a half-width: 0.1 dB (common practice, no source).
    private const double MatchedHalfWidths = 0.15;

    public static BenchDefinition Fit(BenchDefinition bench, GeneratorProfile profile, Random random)
    {
        var truths = OutputTruths.Of(bench, profile).Outputs.ToDictionary(truth => truth.Output);
        var sound = bench with
        {
            Outputs = [.. bench.Outputs.Select(output => output.Aged is null ? output : output with { Aged = Matched(truths[output.Number].Peak!, random) })],
        };
        return sound with { Truth = OutputTruths.Of(sound, profile) };
    }

    // Paper as good as new: D of 0.002 to 0.008 (from memory).
    private static AgedCapacitorDefinition Matched(PeakTruth peak, Random random) => new()
    {
        Picofarads = Math.Round(peak.Picofarads + (peak.HalfWidthPicofarads * MatchedHalfWidths * ((2 * random.NextDouble()) - 1)), 1),
        LossTangent = Math.Round(0.002 + (0.006 * random.NextDouble()), 4),
    };
}
