using AutoSweep.Core.Curve;

namespace AutoSweep.Core.Magnets;

/// <summary>Which magnets to go to and in which order: most gain for least handling first.</summary>
/// <param name="Works">The outputs to level, in order.</param>
/// <param name="LeftOut">Those that are outside their tolerance too, and why they are not touched.</param>
public sealed record MagnetWorkOrder(IReadOnlyList<MagnetWork> Works, IReadOnlyList<MagnetLeftOut> LeftOut)
{
    // What is left of a deviation after a move: the slope is learnt to about the hand's own error, a quarter (measured: the benchmark "magnets").
    private const double LeftAfterMove = 0.25;

    // A rod that has to go in goes out first, to learn its slope where nothing can be touched.
    private const double MovesToLearn = 1;

    /// <summary>Makes the order.</summary>
    /// <param name="comparison">The levels after the recap against the target.</param>
    /// <param name="notMagnets">Outputs whose level is not a magnet's business, with the reason.</param>
    /// <param name="options">How rods are guided.</param>
    public static MagnetWorkOrder Of(CurveComparison comparison, IReadOnlyDictionary<int, string> notMagnets, MagnetGuidanceOptions options)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(notMagnets);
        ArgumentNullException.ThrowIfNull(options);
        var outside = comparison.Deviations.Where(one => one.Verdict is CurveVerdict.TooLoud or CurveVerdict.TooSoft).ToList();
        return new(
            [.. outside.Where(one => !notMagnets.ContainsKey(one.Output)).Select(one => Work(one, options))
                .OrderByDescending(work => work.Worth).ThenBy(work => work.Output)],
            [.. outside.Where(one => notMagnets.ContainsKey(one.Output)).Select(one => new MagnetLeftOut(one.Output, notMagnets[one.Output]))]);
    }

    private static MagnetWork Work(CurveDeviation one, MagnetGuidanceOptions options)
    {
        var (off, learning) = (Math.Abs(one.Decibels!.Value), one.Verdict == CurveVerdict.TooSoft ? MovesToLearn : 0);
        var moves = learning + 1 + Math.Max(0, Math.Log(options.HalfBandDecibels / off) / Math.Log(LeftAfterMove));
        return new(one.Output, one.Decibels.Value, one.TargetMillivolts!.Value, off - one.ToleranceDecibels, moves);
    }
}
