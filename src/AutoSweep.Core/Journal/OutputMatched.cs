namespace AutoSweep.Core.Journal;

/// <summary>What a match gave to an output.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="WantedPicofarads">The capacitance that it wants at nominal mains, in picofarads.</param>
/// <param name="Parts">The ids of its parts; empty where the stock does not suffice.</param>
/// <param name="SumPicofarads">What they add up to in picofarads.</param>
/// <param name="LossDecibels">The expected loss in decibels; none without parts.</param>
public sealed record OutputMatched(int Output, long WantedPicofarads, IReadOnlyList<string> Parts, long SumPicofarads,
    double? LossDecibels = null);
