namespace AutoSweep.Sim.Benches;

/// <summary>A capacitor in the shop's drawer.</summary>
internal sealed record PartDefinition
{
    /// <summary>What is printed on it.</summary>
    public required double NominalPicofarads { get; init; }

    /// <summary>The printed tolerance.</summary>
    public required double TolerancePercent { get; init; }

    /// <summary>What it is.</summary>
    public required double Picofarads { get; init; }

    public required double LossTangent { get; init; }
}
