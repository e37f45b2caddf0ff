using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>What is to be matched with what.</summary>
/// <param name="Targets">The outputs, each once.</param>
/// <param name="Parts">The parts that may be used: available ones, and those that are reserved for this job.</param>
public sealed record MatchRequest(IReadOnlyList<MatchTarget> Targets, IReadOnlyList<Part> Parts)
{
    /// <summary>Parts that must go to an output, by output; others may be added to them.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<string>> Pinned { get; init; } = new Dictionary<int, IReadOnlyList<string>>();

    /// <summary>Parts that must not be used.</summary>
    public IReadOnlySet<string> Excluded { get; init; } = new HashSet<string>();

    /// <summary>What an earlier match gave to each output; the fewer of these move the better.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<string>> Earlier { get; init; } = new Dictionary<int, IReadOnlyList<string>>();
}
