namespace AutoSweep.Core.Matching;

/// <summary>The best combinations of one size for one target.</summary>
/// <param name="Kept">Those that are kept.</param>
/// <param name="NextMeanSquare">What those within the limit that were not kept cost at least; none where every one was kept.</param>
internal sealed record CandidateSet(IReadOnlyList<Candidate> Kept, double? NextMeanSquare);
