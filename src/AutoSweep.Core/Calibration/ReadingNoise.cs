using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Calibration;

/// <summary>The scatter of a meter's readings: a floor, and a share of the value.</summary>
/// <param name="FloorPicofarads">The standard deviation of a small value, in picofarads.</param>
/// <param name="Share">The standard deviation of a large value, as a share of it.</param>
/// <param name="DegreesOfFreedom">How well both are known.</param>
public sealed record ReadingNoise(double FloorPicofarads, double Share, double DegreesOfFreedom)
{
    // A variance so much above the others' is no scatter but a contact that came and went.
    private const double NoScatter = 1e-6;

    // Fewer repetitions tell a standard deviation no better than to a quarter (JCGM 100:2008, table E.1).
    private const int LeastDegrees = 10;

    // The fixed point is reached in a few rounds: the weights change with the square root of the estimate only.
    private const int Rounds = 20;

    /// <summary>The variance of one reading, in square picofarads.</summary>
    public double Variance(double picofarads) => (FloorPicofarads * FloorPicofarads) + (Share * Share * picofarads * picofarads);

    /// <summary>The scatter between repeated readings of the same sets.</summary>
    /// <param name="sets">The sets; those read once tell nothing.</param>
    /// <returns>Null where too few were read again.</returns>
    internal static ReadingNoise? Of(IReadOnlyList<CalibrationSet> sets)
    {
        var repeated = sets.Where(set => set.Count > 1).ToArray();
        if (repeated.Sum(set => set.Count - 1) < LeastDegrees)
            return null;
        var share = repeated.Select(set => set.Variance / (set.Mean * set.Mean) / MedianChiSquared(set.Count - 1)).Median();
        var steady = repeated.Where(set => IsScatter(set, share * set.Mean * set.Mean)).ToArray();
        return Components(steady, share);
    }

    private static double MedianChiSquared(int degrees) => ChiSquared.InvCDF(degrees, 0.5) / degrees;

    private static bool IsScatter(CalibrationSet set, double expected) =>
        set.Mean < 1000 || 1 - ChiSquared.CDF(set.Count - 1, (set.Count - 1) * set.Variance / expected) > NoScatter;

    // Var = floor² + share²·C² by moments, each set's variance weighted by its own (2·Var²/degrees), and neither below 0.
    private static ReadingNoise Components(IReadOnlyList<CalibrationSet> sets, double firstShare)
    {
        var (floor, share) = (0.0, firstShare);
        for (var round = 0; round < Rounds; round++)
            (floor, share) = Refined(sets, floor, share);
        return new(Math.Sqrt(floor), Math.Sqrt(share), sets.Sum(set => set.Count - 1));
    }

    private static (double Floor, double Share) Refined(IReadOnlyList<CalibrationSet> sets, double floor, double share)
    {
        double one = 0, square = 0, fourth = 0, variance = 0, both = 0;
        foreach (var set in sets)
        {
            var c2 = set.Mean * set.Mean;
            var expected = floor + (share * c2) + double.Epsilon;
            var weight = (set.Count - 1) / (expected * expected);
            (one, square, fourth) = (one + weight, square + (weight * c2), fourth + (weight * c2 * c2));
            (variance, both) = (variance + (weight * set.Variance), both + (weight * set.Variance * c2));
        }

        var determinant = (one * fourth) - (square * square);
        var (a, s) = (((variance * fourth) - (both * square)) / determinant, ((one * both) - (square * variance)) / determinant);
        return (a, s) switch
        {
            ( >= 0, >= 0) => (a, s),
            ( < 0, _) => (0, both / fourth),
            _ => (variance / one, 0),
        };
    }
}
