namespace AutoSweep.Core.Matching;

/// <summary>A packing and its proof.</summary>
/// <param name="Chosen">The index of each group's choice, by group.</param>
/// <param name="Levels">What was reached and proven at each level.</param>
public sealed record PackingSolution(IReadOnlyList<int> Chosen, IReadOnlyList<LevelProof> Levels);
