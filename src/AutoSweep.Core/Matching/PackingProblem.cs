namespace AutoSweep.Core.Matching;

/// <summary>Exactly one choice for each group, no resource overdrawn, the costs least in lexicographic order.</summary>
/// <remarks>
/// With parts as resources of capacity 1 this packs parts onto outputs; with agents as resources it is the generalized assignment
/// problem of the literature, on whose published instances the solver is tested.
/// </remarks>
/// <param name="Groups">How many groups there are.</param>
/// <param name="Capacities">The capacity of each resource.</param>
/// <param name="Choices">Every choice of every group.</param>
public sealed record PackingProblem(int Groups, IReadOnlyList<long> Capacities, IReadOnlyList<PackingChoice> Choices)
{
    /// <summary>How many levels of cost there are.</summary>
    public int Levels => Choices.Count == 0 ? 0 : Choices[0].Costs.Count;

    /// <summary>The cost of some choices together at a level.</summary>
    public long Cost(IEnumerable<int> chosen, int level) => chosen.Sum(choice => Choices[choice].Costs[level]);

    /// <summary>The sum of each group's least cost at a level: what no packing can undercut.</summary>
    public long Floor(int level) => Choices.GroupBy(choice => choice.Group).Sum(group => group.Min(choice => choice.Costs[level]));

    /// <summary>Groups with the fewest choices first, each given its first choice, by cost, whose resources are left; none where one gets
    /// nothing.</summary>
    public IReadOnlyList<int>? FirstPacking()
    {
        long[] left = [.. Capacities];
        List<int> chosen = [];
        foreach (var group in Enumerable.Range(0, Choices.Count).GroupBy(index => Choices[index].Group).OrderBy(group => group.Count()))
        {
            var choice = group.OrderBy(index => Choices[index].Costs, CostOrder)
                .FirstOrDefault(index => Choices[index].Uses.All(use => left[use.Resource] >= use.Amount), -1);
            if (choice < 0)
                return null;
            foreach (var use in Choices[choice].Uses)
                left[use.Resource] -= use.Amount;
            chosen.Add(choice);
        }

        return chosen.Count == Groups ? chosen : null;
    }

    private static Comparer<IReadOnlyList<long>> CostOrder { get; } = Comparer<IReadOnlyList<long>>.Create((left, right) =>
        left.Zip(right, (one, other) => one.CompareTo(other)).FirstOrDefault(order => order != 0));
}
