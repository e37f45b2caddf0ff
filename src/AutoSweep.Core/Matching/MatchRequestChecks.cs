namespace AutoSweep.Core.Matching;

/// <summary>Whether what was pinned and excluded by hand can be.</summary>
internal static class MatchRequestChecks
{
    /// <summary>Refuses a request that contradicts itself or the stock.</summary>
    /// <exception cref="BenchFaultException">Names the output and the part.</exception>
    public static void Check(MatchRequest request, MatchOptions options)
    {
        var ids = request.Parts.Select(part => part.Id).ToHashSet();
        HashSet<string> seen = [];
        foreach (var (output, parts) in request.Pinned)
        {
            if (request.Targets.All(target => target.Output != output))
                throw Refuse($"parts are pinned to output {output}", "an output that is swept, has a peak and is not fitted yet",
                    "leave that pin out");
            if (parts.Count > options.MostParts)
                throw Refuse($"{parts.Count} parts are pinned to output {output}", $"at most {options.MostParts}",
                    "pin fewer, or allow more parts an output");
            foreach (var id in parts)
                CheckPart(output, id, ids, seen, request.Excluded);
        }
    }

    private static void CheckPart(int output, string id, HashSet<string> ids, HashSet<string> seen, IReadOnlySet<string> excluded)
    {
        if (excluded.Contains(id))
            throw Refuse($"part {id} is pinned to output {output} and excluded too", "one or the other", "leave one of the two out");
        if (!ids.Contains(id))
            throw Refuse($"part {id}, pinned to output {output}, is not free", "a part that is available, or reserved for this job",
                "see autosweep stock list for the parts that are");
        if (!seen.Add(id))
            throw Refuse($"part {id} is pinned twice", "each part at one place", "leave one of the two pins out");
    }

    private static BenchFaultException Refuse(string found, string expected, string whatToDo) =>
        new(BenchFault.StockRefused, found, expected, whatToDo);
}
