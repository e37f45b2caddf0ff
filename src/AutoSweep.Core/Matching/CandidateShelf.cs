namespace AutoSweep.Core.Matching;

/// <summary>Keeps the best of many candidates and remembers the best that it did not keep.</summary>
/// <param name="room">How many are kept.</param>
/// <param name="limit">The mean square of the detuning beyond which a candidate is none.</param>
/// <param name="always">Places of parts whose every combination is kept.</param>
internal sealed class CandidateShelf(int room, double limit, IReadOnlySet<int> always)
{
    private readonly PriorityQueue<Candidate, double> _worstFirst = new();
    private readonly List<Candidate> _always = [];
    private double? _next;

    public void Offer(Candidate candidate)
    {
        if (candidate.MeanSquare > limit)
            return;
        if (always.Count > 0 && candidate.HasAny(always))
            _always.Add(candidate);
        else if (_worstFirst.Count < room)
            _worstFirst.Enqueue(candidate, -candidate.MeanSquare);
        else
            Leave(_worstFirst.EnqueueDequeue(candidate, -candidate.MeanSquare).MeanSquare);
    }

    /// <summary>Says that candidates of at least this cost were not even looked at.</summary>
    public void Leave(double meanSquare) => _next = Math.Min(_next ?? double.PositiveInfinity, meanSquare);

    public CandidateSet Take() => new(
        [.. _always, .. _worstFirst.UnorderedItems.Select(item => item.Element).OrderBy(one => one.MeanSquare).ThenBy(one => one.First)
            .ThenBy(one => one.Second)],
        _next <= limit ? _next : null);
}
