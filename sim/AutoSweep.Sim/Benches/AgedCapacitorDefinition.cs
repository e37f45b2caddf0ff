namespace AutoSweep.Sim.Benches;

/// <summary>The old capacitor as it measures now.</summary>
internal sealed record AgedCapacitorDefinition
{
    public required double Picofarads { get; init; }

    public required double LossTangent { get; init; }
}
