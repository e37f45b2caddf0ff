using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Tests.Matching.Support;

/// <summary>Tries every way to give parts to outputs. Shares with the product the loss of one combination, and nothing else.</summary>
internal sealed class BruteForce(MatchRequest request, MatchOptions options)
{
    private (long Outside, long Parts, long Moved, long Loss) _best = (long.MaxValue, 0, 0, 0);

    public (long Outside, long Parts, long Moved, long Loss) Best()
    {
        Try(0, [], default);
        return _best;
    }

    private void Try(int index, HashSet<string> used, (long Outside, long Parts, long Moved, long Loss) cost)
    {
        if (index == request.Targets.Count)
        {
            if (cost.CompareTo(_best) < 0)
                _best = cost;
            return;
        }

        var target = request.Targets[index];
        var pinned = request.Pinned.GetValueOrDefault(target.Output, []);
        for (var set = 0; set < 1 << request.Parts.Count; set++)
        {
            var parts = request.Parts.Where((_, place) => (set >> place & 1) == 1).ToList();
            if (parts.Count <= options.MostParts && IsAllowed(target.Output, parts, used) && CostOf(target, pinned, parts) is { } added)
                Try(index + 1, [.. used, .. parts.Select(part => part.Id)],
                    (cost.Outside + added.Outside, cost.Parts + parts.Count, cost.Moved + added.Moved, cost.Loss + added.Loss));
        }
    }

    private bool IsAllowed(int output, List<Part> parts, HashSet<string> used)
    {
        var ids = parts.Select(part => part.Id).ToList();
        var elsewhere = request.Pinned.Where(pin => pin.Key != output).SelectMany(pin => pin.Value);
        return !ids.Any(used.Contains) && !ids.Any(request.Excluded.Contains) && !ids.Intersect(elsewhere).Any()
            && request.Pinned.GetValueOrDefault(output, []).All(ids.Contains);
    }

    // No parts at all is outside; parts outside the limit are only taken where they are pinned and nothing is added.
    private (long Outside, long Moved, long Loss)? CostOf(MatchTarget target, IReadOnlyList<string> pinned, List<Part> parts)
    {
        var moved = request.Earlier.GetValueOrDefault(target.Output, [])
            .Count(id => request.Parts.Any(part => part.Id == id) && parts.All(part => part.Id != id));
        if (parts.Count == 0)
            return (1, moved, 0);
        var sum = parts.Sum(part => part.Measured.Picofarads);
        var loss = new LevelLoss(target).Decibels(sum, parts.Sum(part =>
            part.Measured.UncertaintyPicofarads * part.Measured.UncertaintyPicofarads));
        var units = (long)Math.Round(loss * 1e7);
        if (loss <= options.LossLimitDecibels + 1e-12)
            return (0, moved, units);
        return parts.Count == pinned.Count ? (1, moved, units) : null;
    }
}
