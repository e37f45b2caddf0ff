using AutoSweep.Core.Magnets;

namespace AutoSweep.Sources.Magnets;

/// <summary>How a way of working does over many rods.</summary>
/// <param name="Runs">Every rod with its outcome.</param>
public sealed record RodScore(IReadOnlyList<RodRun> Runs)
{
    // What a rod must leave at the highest tooth to count as one that can be brought into its band.
    private const double Leaving = 0.05;

    /// <summary>How many rods were driven into the wheel.</summary>
    public int Contacts => Runs.Count(run => run.Touched);

    /// <summary>The runs whose target can be reached with a gap left.</summary>
    public IReadOnlyList<RodRun> Reachable => [.. Runs.Where(run => run.Truth.CanBeReached(Leaving))];

    /// <summary>Half of the rods that can be brought into their band need no more moves; one that was not brought there counts as infinitely many.</summary>
    public double MedianMoves(IReadOnlyList<RodRun> of) =>
        SearchScore.Quantile(0.5, of.Select(run => run.Ending == GuidanceEnding.InBand ? run.Moves : double.PositiveInfinity));

    /// <summary>The share of rods that end as said.</summary>
    public static double Share(IReadOnlyList<RodRun> of, GuidanceEnding ending) => of.Count(run => run.Ending == ending) / (double)of.Count;

    /// <summary>Guides every rod; its least gap is the leaf that passes, or the default where none is put in.</summary>
    /// <param name="rods">The rods.</param>
    /// <param name="hand">The hand that moves them.</param>
    /// <param name="options">How they are guided.</param>
    /// <param name="withLeaf">Whether a leaf was put in.</param>
    /// <param name="tooThick">By how many millimetres the leaf was read too thick.</param>
    public static RodScore Guided(IReadOnlyList<RodTruth> rods, RodHand hand, MagnetGuidanceOptions options, bool withLeaf = true, double tooThick = 0) => new(
        [.. rods.AsParallel().AsOrdered().Select((rod, i) => RodRun.Guided(
            rod, hand, options, withLeaf ? rod.LeafMillimetres + tooThick : MagnetRod.UnmeasuredGapMillimetres, i))]);

    /// <summary>Works every rod by fixed steps.</summary>
    public static RodScore FixedSteps(IReadOnlyList<RodTruth> rods, RodHand hand, MagnetGuidanceOptions options, double step) => new(
        [.. rods.AsParallel().AsOrdered().Select((rod, i) => RodRun.FixedSteps(rod, hand, options, step, i))]);
}
