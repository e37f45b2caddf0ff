namespace AutoSweep.Worker.Parts;

/// <summary>How fitting is walked and what is accepted.</summary>
public sealed record FitOptions
{
    /// <summary>The expected loss up to which measured parts are accepted without a question, in decibels.</summary>
    /// <value>Default 0.05 dB, the limit of the match.</value>
    public double LossLimitDecibels { get; init; } = 0.05;

    /// <summary>How many other combinations are offered for an output whose parts do not measure up.</summary>
    /// <value>Default 3.</value>
    public int Offers { get; init; } = 3;

    /// <summary>How far the measured sum may lie from the sum of the ledger's values before it is taken for a wrong part, as a share.</summary>
    /// <value>Default 0.02: a film part drifts by less in years (data books: 0.5 to 3 %), and two bins lie further apart.</value>
    public double WrongPartShare { get; init; } = 0.02;

    /// <summary>Whether the list goes by bins, so that each bin is opened once; otherwise by outputs.</summary>
    public bool ByBins { get; init; }
}
