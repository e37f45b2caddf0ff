namespace AutoSweep.Core.Matching;

/// <summary>What an output gets.</summary>
/// <param name="Target">The output and what it wants.</param>
/// <param name="Combination">The parts; none where the stock does not suffice.</param>
/// <param name="LossDecibels">The expected loss with them in decibels; none without parts.</param>
/// <param name="WithinLimit">Whether that is within the loss limit; false without parts.</param>
public sealed record MatchedOutput(MatchTarget Target, Combination? Combination, double? LossDecibels, bool WithinLimit);
