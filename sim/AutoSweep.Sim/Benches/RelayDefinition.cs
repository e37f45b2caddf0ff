namespace AutoSweep.Sim.Benches;

/// <summary>One relay's capacitor.</summary>
internal sealed record RelayDefinition
{
    /// <summary>What the dial says.</summary>
    public required double NominalPicofarads { get; init; }

    /// <summary>What it is.</summary>
    public required double Picofarads { get; init; }

    /// <summary>What is wrong with it, or nothing.</summary>
    public RelayFault? Fault { get; init; }
}
