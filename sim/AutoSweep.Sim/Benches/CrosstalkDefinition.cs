namespace AutoSweep.Sim.Benches;

/// <summary>Another wheel's tone that leaks into a pickup coil.</summary>
internal sealed record CrosstalkDefinition
{
    /// <summary>The output whose wheel it is.</summary>
    public required int FromOutput { get; init; }

    /// <summary>Part of that wheel's emf that appears in this coil, in per cent.</summary>
    public required double Percent { get; init; }
}
