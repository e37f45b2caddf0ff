using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>The magnet rods: slope by the wheel's teeth, gap, play and lock at random.</summary>
internal static class RodParts
{
    // exp(-2·pi·gap/pitch) on a two-inch wheel, in decibels a millimetre and tooth (field law, trade data, computed).
    private const double DecibelsPerMillimetreAndTooth = 0.342;

    public static RodDefinition Draw(int teeth, Random random) => new()
    {
        // Half to double of what the law and, on coarse wheels, the mean gap make; gaps are a guess.
        DecibelsPerMillimetre = Math.Round(((DecibelsPerMillimetreAndTooth * teeth) + 3) * Math.Pow(2, Between(random, -1, 1)), 3),
        GapMillimetres = Math.Round(Between(random, 0.2, 0.9), 3),
        BacklashMillimetres = Math.Round(Between(random, 0, 0.015), 4),
        LockingMillimetres = Math.Round(Between(random, -0.003, 0.003), 4),
    };

    private static double Between(Random random, double least, double most) => least + ((most - least) * random.NextDouble());
}
