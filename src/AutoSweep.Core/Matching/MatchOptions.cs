namespace AutoSweep.Core.Matching;

/// <summary>How parts are matched.</summary>
public sealed record MatchOptions
{
    /// <summary>The expected loss that an output may have, in decibels.</summary>
    /// <value>0.05 dB: a tenth of a half-width off, far below what is heard (common practice, no source).</value>
    public double LossLimitDecibels { get; init; } = 0.05;

    /// <summary>The most parts in parallel at one output, 1 to 3.</summary>
    /// <value>2.</value>
    public int MostParts { get; init; } = 2;

    /// <summary>How many combinations of each size are looked at first for each output; more where these do not prove enough.</summary>
    /// <value>100.</value>
    public int CandidatesPerOutput { get; init; } = 100;

    /// <summary>The seed of the search.</summary>
    /// <value>1.</value>
    public int Seed { get; init; } = 1;

    /// <summary>The most time for the whole match.</summary>
    /// <value>10 seconds.</value>
    public TimeSpan TimeLimit { get; init; } = TimeSpan.FromSeconds(10);
}
