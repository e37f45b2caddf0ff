namespace AutoSweep.Core.Matching;

/// <summary>What to buy for the outputs for which the stock does not suffice.</summary>
/// <param name="Lines">The fewest values that cure them, and of these the fewest pieces.</param>
/// <param name="Uncured">Outputs that no line of a reasonable quantity cures.</param>
public sealed record BuyingList(IReadOnlyList<BuyingLine> Lines, IReadOnlyList<int> Uncured);
