namespace AutoSweep.Core.Matching;

/// <summary>How much of a resource a choice takes.</summary>
/// <param name="Resource">The resource's index.</param>
/// <param name="Amount">How much of it; above 0.</param>
public readonly record struct PackingUse(int Resource, long Amount);
