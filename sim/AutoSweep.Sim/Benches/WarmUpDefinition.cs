namespace AutoSweep.Sim.Benches;

/// <summary>The drift of every level while the generator warms up.</summary>
internal sealed record WarmUpDefinition
{
    /// <summary>How far levels are off at the start, in per cent; negative is low.</summary>
    public required double StartPercent { get; init; }

    /// <summary>The time in which the rest of the drift falls to 1/e.</summary>
    public required double Seconds { get; init; }
}
