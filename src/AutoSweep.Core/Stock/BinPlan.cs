using System.Globalization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Stock;

/// <summary>Which bin a measured part goes into: the value scale, cut at some points.</summary>
/// <param name="CutsPicofarads">The cut points in picofarads, ascending. A part of exactly that value goes into the bin above.</param>
public sealed record BinPlan(IReadOnlyList<long> CutsPicofarads)
{
    /// <summary>How many parts a bin holds before a hand stops finding things in it: common practice, no source.</summary>
    public const int PartsPerBin = 25;

    /// <summary>Cut points for the stock at hand: bins of about equal count, each cut at a round value in the widest gap near its place.</summary>
    /// <param name="picofarads">The values in stock, in any order.</param>
    /// <param name="partsPerBin">About how many parts a bin is to hold; 1 or more.</param>
    public static BinPlan For(IEnumerable<long> picofarads, int partsPerBin = PartsPerBin)
    {
        long[] sorted = [.. picofarads.Order()];
        var bins = (int)Math.Ceiling(sorted.Length / (double)partsPerBin);
        var cuts = Enumerable.Range(1, Math.Max(0, bins - 1)).Select(bin => Cut(sorted, (int)((long)sorted.Length * bin / bins), Math.Max(1, partsPerBin / 4)));
        return new([.. cuts.Distinct().Order()]);
    }

    /// <summary>The bin of a value: the numbers from 1, ascending with the value, as <c>B03</c>.</summary>
    public string BinOf(long picofarads) => string.Create(CultureInfo.InvariantCulture, $"B{CutsPicofarads.Count(cut => cut <= picofarads) + 1:00}");

    /// <summary>The bins with their ranges, for a label on each.</summary>
    public IEnumerable<(string Bin, string Range)> Labels()
    {
        for (var bin = 0; bin <= CutsPicofarads.Count; bin++)
        {
            var from = bin == 0 ? "" : $"from {new Capacitance(CutsPicofarads[bin - 1])}";
            var to = bin == CutsPicofarads.Count ? "" : $"below {new Capacitance(CutsPicofarads[bin])}";
            yield return (BinOf(bin == 0 ? 0 : CutsPicofarads[bin - 1]), $"{from} {to}".Trim());
        }
    }

    private static long Cut(long[] sorted, int place, int reach)
    {
        var best = Enumerable.Range(place - reach, (2 * reach) + 1)
            .Where(index => index > 0 && index < sorted.Length)
            .OrderByDescending(index => sorted[index] - sorted[index - 1]).ThenBy(index => Math.Abs(index - place)).First();
        return Roundest(sorted[best - 1], sorted[best]);
    }

    // The value with the fewest digits above the lower part and not above the upper one.
    private static long Roundest(long below, long above)
    {
        for (var unit = 1_000_000_000L; unit > 1; unit /= 10)
        {
            var candidate = above / unit * unit;
            if (candidate > below)
                return candidate;
        }

        return above;
    }
}
