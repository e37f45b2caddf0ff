namespace AutoSweep.Core.Matching;

/// <summary>One way to serve a group.</summary>
/// <param name="Group">The group's index.</param>
/// <param name="Uses">The resources that it takes, each at most once.</param>
/// <param name="Costs">Its cost at each level, the most important first.</param>
public sealed record PackingChoice(int Group, IReadOnlyList<PackingUse> Uses, IReadOnlyList<long> Costs);
