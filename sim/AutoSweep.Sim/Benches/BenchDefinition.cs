namespace AutoSweep.Sim.Benches;

/// <summary>A whole simulated bench, as its file holds it.</summary>
internal sealed record BenchDefinition
{
    /// <summary>Version of the file format; 1 is the only one.</summary>
    public required int Format { get; init; }

    public required string Name { get; init; }

    public required string About { get; init; }

    /// <summary>Seed of everything that is random while the bench is served.</summary>
    public required int Seed { get; init; }

    /// <summary>The generator profile: a file beside the bench, or the name of a shipped one.</summary>
    public required string Profile { get; init; }

    public required MainsDefinition Mains { get; init; }

    public required WarmUpDefinition WarmUp { get; init; }

    public required FrontEndDefinition FrontEnd { get; init; }

    public required MeterDefinition Meter { get; init; }

    public required CapacitanceMeterDefinition CapacitanceMeter { get; init; }

    public required FixtureDefinition Fixture { get; init; }

    public required HandsDefinition Hands { get; init; }

    public required IReadOnlyList<PlantedFault> Faults { get; init; }

    /// <summary>The capacitors in the shop's drawers, in the order in which the hands take them out.</summary>
    public required IReadOnlyList<PartDefinition> Parts { get; init; }

    public required IReadOnlyList<OutputDefinition> Outputs { get; init; }

    public required BenchTruth Truth { get; init; }
}
