using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;

namespace AutoSweep.Sources.Matching;

/// <summary>What hands do: output by output, the best single or pair of what is left.</summary>
public static class HandsMatch
{
    /// <summary>The match; an output for which nothing within the limit is left gets nothing.</summary>
    public static HandsResult Match(IReadOnlyList<MatchTarget> targets, IReadOnlyList<Part> parts, double limitDecibels)
    {
        var left = parts.ToList();
        var (outside, used, total) = (0, 0, 0.0);
        foreach (var target in targets)
        {
            var loss = new LevelLoss(target);
            var best = Best(loss, left);
            var decibels = LevelLoss.ToDecibels(best.Square);
            if (decibels > limitDecibels)
            {
                outside++;
                continue;
            }

            total += decibels;
            used += best.Parts.Length;
            left.RemoveAll(best.Parts.Contains);
        }

        return new(outside, used, total);
    }

    private static (double Square, Part[] Parts) Best(LevelLoss loss, List<Part> left)
    {
        var best = (Square: double.PositiveInfinity, Parts: Array.Empty<Part>());
        for (var one = 0; one < left.Count; one++)
        {
            Take(ref best, loss, left[one]);
            for (var other = one + 1; other < left.Count; other++)
                Take(ref best, loss, left[one], left[other]);
        }

        return best;
    }

    private static void Take(ref (double Square, Part[] Parts) best, LevelLoss loss, params ReadOnlySpan<Part> parts)
    {
        var (sum, variance) = (0L, 0.0);
        foreach (var part in parts)
        {
            sum += part.Measured.Picofarads;
            variance += part.Measured.UncertaintyPicofarads * part.Measured.UncertaintyPicofarads;
        }

        var square = loss.MeanSquare(sum, variance);
        if (square < best.Square)
            best = (square, parts.ToArray());
    }
}
