namespace AutoSweep.Core.Matching;

/// <summary>A combination as the enumeration sees it: places of parts in the list of parts, -1 for none.</summary>
/// <param name="First">The largest part added; -1 where pinned parts stand alone.</param>
/// <param name="Second">The second.</param>
/// <param name="Third">The third.</param>
/// <param name="MeanSquare">The expected square of the detuning in half-widths.</param>
internal readonly record struct Candidate(int First, int Second, int Third, double MeanSquare)
{
    /// <summary>The places of the parts added.</summary>
    public IEnumerable<int> Places => new[] { First, Second, Third }.Where(place => place >= 0);

    /// <summary>Whether any of some places is among them.</summary>
    public bool HasAny(IReadOnlySet<int> places) => places.Contains(First) || places.Contains(Second) || places.Contains(Third);
}
