using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>A match as a packing problem: an output is a group, a part a resource, a combination a choice.</summary>
/// <remarks>
/// Only the best combinations of each size are choices. What stands for all the others is one choice that takes no part and costs what
/// the best of them costs: with it the packing's bound holds for all combinations that there are, and a packing that does not take it
/// is the best of all. Where it is taken, <see cref="Widen"/> looks at more combinations of that output.
/// </remarks>
internal sealed class MatchModel
{
    private const int WidenBy = 8;

    private readonly MatchRequest _request;
    private readonly MatchOptions _options;
    private readonly Dictionary<string, int> _place;
    private readonly IReadOnlyList<int>[] _pinned;
    private readonly IReadOnlySet<int>[] _earlier;
    private readonly CandidateSearch[] _search;
    private readonly Dictionary<(int Group, int Added), (int Keep, CandidateSet Set)> _sets = [];

    public MatchModel(MatchRequest request, MatchOptions options)
    {
        (_request, _options) = (request, options);
        _place = request.Parts.Select((part, place) => (part.Id, place)).ToDictionary(one => one.Id, one => one.place);
        _pinned = [.. request.Targets.Select(target => Places(request.Pinned, target.Output))];
        _earlier = [.. request.Targets.Select(target => Places(request.Earlier, target.Output).ToHashSet())];
        var taken = _pinned.SelectMany(places => places).ToHashSet();
        int[] free = [.. _place.Values.Where(place => !taken.Contains(place) && !request.Excluded.Contains(request.Parts[place].Id))
            .Order()];
        _search = [.. request.Targets.Select((target, group) =>
            new CandidateSearch(target, options.LossLimitDecibels, request.Parts, free, _pinned[group], _earlier[group]))];
        Parallel.For(0, request.Targets.Count, group => Fill(group));
    }

    /// <summary>How many combinations are choices.</summary>
    public int Candidates => _sets.Values.Sum(one => one.Set.Kept.Count);

    /// <summary>The choices, in the order of the problem's.</summary>
    public IReadOnlyList<MatchChoice> Choices { get; private set; } = [];

    /// <summary>The packing problem.</summary>
    /// <param name="withOthers">Whether the combinations that were not kept are stood for: a bound for all, but no packing to use.</param>
    public PackingProblem Problem(bool withOthers)
    {
        Choices = [.. Enumerable.Range(0, _request.Targets.Count).SelectMany(group => ChoicesOf(group, withOthers))];
        return new(_request.Targets.Count, [.. Enumerable.Repeat(1L, _request.Parts.Count)], [.. Choices.Select(Packed)]);
    }

    /// <summary>Looks at more combinations of an output and a size.</summary>
    public void Widen(MatchChoice choice)
    {
        var key = (choice.Group, choice.Added);
        Fill(key, _sets[key].Keep * WidenBy);
    }

    private IReadOnlyList<int> Places(IReadOnlyDictionary<int, IReadOnlyList<string>> ids, int output) =>
        [.. ids.GetValueOrDefault(output, []).Where(_place.ContainsKey).Select(id => _place[id])];

    private void Fill(int group)
    {
        for (var added = 1; added <= _options.MostParts - _pinned[group].Count; added++)
            Fill((group, added), _options.CandidatesPerOutput);
    }

    private void Fill((int Group, int Added) key, int keep)
    {
        var set = _search[key.Group].Best(key.Added, keep);
        lock (_sets)
            _sets[key] = (keep, set);
    }

    private IEnumerable<MatchChoice> ChoicesOf(int group, bool withOthers)
    {
        yield return _pinned[group].Count == 0
            ? new(group, MatchChoiceKind.Nothing, 0, [], 0)
            : Chosen(group, 0, _search[group].PinnedAlone);
        for (var added = 1; added <= _options.MostParts - _pinned[group].Count; added++)
        {
            var (_, set) = _sets[(group, added)];
            foreach (var candidate in set.Kept)
                yield return Chosen(group, added, candidate);
            if (withOthers && set.NextMeanSquare is { } next)
                yield return new(group, MatchChoiceKind.Others, added, [], next);
        }
    }

    private MatchChoice Chosen(int group, int added, Candidate candidate) =>
        new(group, MatchChoiceKind.Parts, added, [.. _pinned[group], .. candidate.Places], candidate.MeanSquare);

    private PackingChoice Packed(MatchChoice choice)
    {
        var earlier = _earlier[choice.Group];
        var loss = LevelLoss.ToDecibels(choice.MeanSquare);
        var outside = choice.Kind == MatchChoiceKind.Nothing || loss > _options.LossLimitDecibels + 1e-12;
        var parts = choice.Kind == MatchChoiceKind.Others ? _pinned[choice.Group].Count + choice.Added : choice.Places.Count;
        // The others hold no earlier part, except among triples, where not all combinations with one are kept.
        var moved = choice is { Kind: MatchChoiceKind.Others, Added: > 2 } ? 0
            : earlier.Count(place => !choice.Places.Contains(place) && !_pinned[choice.Group].Contains(place));
        return new(
            choice.Group,
            [.. choice.Places.Select(place => new PackingUse(place, 1))],
            [outside ? 1 : 0, parts, moved, (long)Math.Round(loss / MatchResult.LossUnitDecibels)]);
    }
}
