using AutoSweep.Core.Curve;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Stock;

/// <summary>What became of the capacitors that were taken off, over all jobs of a ledger.</summary>
public static class CapacitorDrift
{
    /// <summary>Years that are drawn together by age.</summary>
    public const int YearsTogether = 10;

    // A scatter of two values is chance.
    private const int FewestForScatter = 3;

    /// <summary>By printed value, ascending; those without one last.</summary>
    public static IReadOnlyList<DriftGroup> ByNominal(StockState state) => By(state, removed => removed.Old.NominalPicofarads);

    /// <summary>By age when they were logged, ascending by decades; those of unknown age last.</summary>
    public static IReadOnlyList<DriftGroup> ByAge(StockState state) => By(state, removed => removed.Old.MadeIn is { } made
        ? Math.Max(0, (removed.At.Year - made) / YearsTogether * YearsTogether) : null);

    /// <summary>How far one had drifted, in per cent of its printed value; none where either value is missing.</summary>
    public static double? Percent(OldCapacitorRemoved old) => old is { Measured: { } measured, NominalPicofarads: { } nominal }
        ? 100.0 * (measured.Picofarads - nominal) / nominal : null;

    private static IReadOnlyList<DriftGroup> By(StockState state, Func<Removed, long?> key) =>
        [.. InForce(state).GroupBy(key).OrderBy(group => group.Key is null).ThenBy(group => group.Key).Select(group => Sum(group.Key, [.. group]))];

    // The latest of an output counts; its date is the ledger's, for one that does not measure has no other.
    private static IEnumerable<Removed> InForce(StockState state) => state.Entries
        .Where(entry => !state.Idle.Contains(entry.Sequence) && entry.Event is OldCapacitorRemoved)
        .Select(entry => new Removed(entry.At, (OldCapacitorRemoved)entry.Event))
        .GroupBy(removed => (removed.Old.Job, removed.Old.Output)).Select(group => group.Last());

    private static DriftGroup Sum(long? key, List<Removed> group)
    {
        double[] drifts = [.. group.Select(removed => Percent(removed.Old)).OfType<double>()];
        var some = drifts.Length > 0;
        return new(
            key, group.Count, group.Count(removed => removed.Old.Measured is null), group.Select(removed => removed.Old.Job).Distinct().Count(),
            some ? drifts.Median() : null, drifts.Length < FewestForScatter ? null : RobustScale.Of(drifts),
            some ? drifts.Min() : null, some ? drifts.Max() : null);
    }

    private sealed record Removed(DateTimeOffset At, OldCapacitorRemoved Old);
}
