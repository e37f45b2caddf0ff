using AutoSweep.Core.Generator;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;

namespace AutoSweep.Sources.Matching;

/// <summary>An invented shop: what a generator wants and what lies in the drawers, drawn from a seed.</summary>
/// <remarks>
/// Wanted values as one measured generator gave them, 92 to 116 nF for the upper filters, and about 255 nF for the six below (common practice:
/// figures of the trade); Q from 5 to 20. The drawers hold film capacitors as they are sold; meter uncertainty 0.05 % and 1 pF. Invented.
/// </remarks>
public static class InventedShop
{
    private static readonly (long Nanofarads, int Weight)[] Drawers = [(100, 34), (220, 8), (68, 6), (47, 10), (33, 10), (22, 8), (10, 8),
        (15, 6), (5, 5), (2, 5)];

    /// <summary>Targets of so many outputs: six low filters in each 43.</summary>
    public static IReadOnlyList<MatchTarget> Targets(int outputs, Random random) =>
        [.. Enumerable.Range(0, outputs).Select(index => Target(49 + index, index % 43 < 6, random))];

    /// <summary>So many measured parts.</summary>
    public static IReadOnlyList<Part> Parts(int count, Random random) =>
        [.. Enumerable.Range(1, count).Select(number => Draw(number, random))];

    /// <summary>A measured part of a given value.</summary>
    public static Part Part(string id, long picofarads, double uncertainty = 0) =>
        new() { Id = id, Measured = new(picofarads, uncertainty, new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero)) };

    private static MatchTarget Target(int output, bool low, Random random)
    {
        var wanted = low ? Between(230_000, 280_000, random) : Between(92_000, 116_000, random);
        var halfWidth = wanted / Between(5, 20, random);
        return new()
        {
            Output = output,
            Wanted = Capacitance.FromPicofarads(wanted),
            HalfWidthPicofarads = halfWidth,
            SdPicofarads = halfWidth * Between(0.005, 0.04, random),
            Law = ResponseLaw.Series,
        };
    }

    private static Part Draw(int number, Random random)
    {
        var ticket = random.Next(Drawers.Sum(drawer => drawer.Weight));
        var nominal = Drawers.First(drawer => (ticket -= drawer.Weight) < 0).Nanofarads * 1000;
        var tolerance = random.Next(2) == 0 ? ("J", 0.05) : ("K", 0.10);
        // Makers sort: within the tolerance, more often near the middle than at the ends.
        var value = nominal * (1 + (tolerance.Item2 * (random.NextDouble() + random.NextDouble() - 1)));
        return Part($"P{number:00000}", (long)value, 1 + (0.0005 * value)) with { NominalPicofarads = nominal,
            ToleranceLetter = tolerance.Item1, RatedVolts = 100 };
    }

    private static double Between(double least, double most, Random random) => least + ((most - least) * random.NextDouble());
}
