namespace AutoSweep.Sim.Benches;

/// <summary>What the fixture's maker measured with a capacitance meter, as the worker reads it: not quite the truth.</summary>
internal sealed record CalibrationSheet
{
    public required string FixtureSerial { get; init; }

    public required double StrayPicofarads { get; init; }

    public required IReadOnlyList<double> RelaysPicofarads { get; init; }

    public DateOnly? Date { get; init; }

    public string? Meter { get; init; }

    public double? StrayStandardUncertaintyPicofarads { get; init; }

    public IReadOnlyList<double>? RelayStandardUncertaintiesPicofarads { get; init; }
}
