namespace AutoSweep.Sim.Panel;

/// <summary>The decade box on the bench: four dials of ten, each made of capacitors of 1, 2, 3 and 4 steps that are anywhere within its tolerance.</summary>
internal sealed class PanelBox
{
    public const double StrayPicofarads = 50;

    private static readonly long[] Steps = [100_000, 10_000, 1000, 100];

    // Which capacitors make a position (a textbook arrangement, from memory).
    private static readonly int[][] Made = [[], [1], [2], [3], [4], [1, 4], [2, 4], [3, 4], [1, 3, 4], [2, 3, 4], [1, 2, 3, 4]];

    private readonly double[][] capacitors;

    public PanelBox(double tolerancePercent, int seed)
    {
        var random = new Random(seed);
        capacitors = [.. Steps.Select(step => Enumerable.Range(1, 4).Select(count => count * step * (1 + (tolerancePercent / 100 * ((2 * random.NextDouble()) - 1)))).ToArray())];
    }

    /// <summary>What the dials add up to as they are printed.</summary>
    public long Printed { get; private set; }

    /// <summary>What is between the box's clips.</summary>
    public double Picofarads { get; private set; } = StrayPicofarads;

    /// <summary>Turns the dials.</summary>
    /// <returns>Whether the box can be set so.</returns>
    public bool Dial(double picofarads)
    {
        var rest = (long)Math.Round(picofarads);
        var real = StrayPicofarads;
        for (var dial = 0; dial < Steps.Length; dial++)
        {
            var position = (int)Math.Min(10, rest / Steps[dial]);
            rest -= position * Steps[dial];
            real += Made[position].Sum(count => capacitors[dial][count - 1]);
        }

        if (rest != 0) return false;
        (Printed, Picofarads) = ((long)Math.Round(picofarads), real);
        return true;
    }
}
