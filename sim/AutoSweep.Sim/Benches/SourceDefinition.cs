namespace AutoSweep.Sim.Benches;

/// <summary>The pickup coil.</summary>
internal sealed record SourceDefinition
{
    /// <summary>The wheel's emf in the coil at nominal mains, in millivolts rms.</summary>
    public required double EmfMillivolts { get; init; }

    public required double Ohms { get; init; }

    public required double Henries { get; init; }
}
