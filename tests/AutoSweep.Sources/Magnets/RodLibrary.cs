using AutoSweep.Core.Magnets;

namespace AutoSweep.Sources.Magnets;

/// <summary>Random rods by seed.</summary>
public static class RodLibrary
{
    // A classic generator: twelve wheels of each kind, seven of the finest (published descriptions).
    private static readonly int[] Teeth = [.. new[] { 2, 4, 8, 16, 32, 64, 128 }.SelectMany(teeth => Enumerable.Repeat(teeth, 12)),
        .. Enumerable.Repeat(192, 7)];

    /// <summary>The first rods of a seed. Half are too loud, half too soft, by 1 to 6 dB; slopes up to three times off the expected one, either way.</summary>
    public static IReadOnlyList<RodTruth> Take(int count, int seed) => [.. Enumerable.Range(0, count).Select(i => One(new(unchecked((seed * 1_000_003) + i))))];

    private static RodTruth One(Random random)
    {
        var teeth = Teeth[random.Next(Teeth.Length)];
        var slope = FieldLaw.Expected(teeth) * Math.Pow(3, Between(random, -1, 1));
        var rod = new RodTruth
        {
            WheelTeeth = teeth,
            DecibelsPerMillimetre = slope,
            GapMillimetres = 0,
            StartDecibels = Between(random, 1, 6) * (random.Next(2) == 0 ? 1 : -1),
            WobbleShare = 0.03,
            BacklashMillimetres = Between(random, 0, 0.015),
            LockingMillimetres = Between(random, -0.003, 0.003),
        };
        return rod with { GapMillimetres = rod.RunOutMillimetres + Between(random, 0.1, 0.8) };
    }

    private static double Between(Random random, double least, double most) => least + ((most - least) * random.NextDouble());
}
