namespace AutoSweep.Sim.Benches;

/// <summary>The answers. Read by scoring and by tests, never by what is served on a wire.</summary>
internal sealed record BenchTruth
{
    public required IReadOnlyList<OutputTruth> Outputs { get; init; }

    public required IReadOnlyList<PlantedFault> Faults { get; init; }
}
