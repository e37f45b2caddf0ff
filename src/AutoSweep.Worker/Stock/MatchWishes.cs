namespace AutoSweep.Worker.Stock;

/// <summary>What was decided by hand before a match.</summary>
public sealed record MatchWishes
{
    /// <summary>Parts that must go to an output, by output.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<string>> Pinned { get; init; } = new Dictionary<int, IReadOnlyList<string>>();

    /// <summary>Parts that must not be used.</summary>
    public IReadOnlySet<string> Excluded { get; init; } = new HashSet<string>();

    /// <summary>The rated voltage that parts must have, in volts; 0 for any.</summary>
    public double RequiredVolts { get; init; }

    /// <summary>Whether an earlier match is forgotten: parts may then move for less loss alone.</summary>
    public bool Afresh { get; init; }
}
