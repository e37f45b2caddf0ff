namespace AutoSweep.Sim.Benches;

/// <summary>One clip of the hands.</summary>
internal sealed record HandsStep
{
    public required int Output { get; init; }

    /// <summary>How long the clip is off before, where that is not the usual time.</summary>
    public double? PauseSeconds { get; init; }

    /// <summary>Why this step is unusual: slow, wrong, repeated.</summary>
    public string? Note { get; init; }
}
