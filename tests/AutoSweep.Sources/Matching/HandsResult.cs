namespace AutoSweep.Sources.Matching;

/// <summary>What the hands' way came to.</summary>
/// <param name="Outside">Outputs outside the loss limit.</param>
/// <param name="PartsUsed">Parts used.</param>
/// <param name="TotalLossDecibels">Total expected loss of the outputs that have parts.</param>
public sealed record HandsResult(int Outside, int PartsUsed, double TotalLossDecibels);
