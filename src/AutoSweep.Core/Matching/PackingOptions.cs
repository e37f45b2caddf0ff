namespace AutoSweep.Core.Matching;

/// <summary>How a packing is searched for.</summary>
public sealed record PackingOptions
{
    /// <summary>The seed of the search: same problem, seed and machine kind, same answer, unless the time limit strikes.</summary>
    /// <value>1.</value>
    public int Seed { get; init; } = 1;

    /// <summary>The most time for the whole search.</summary>
    /// <value>10 seconds.</value>
    public TimeSpan TimeLimit { get; init; } = TimeSpan.FromSeconds(10);
}
