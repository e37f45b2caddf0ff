using System.Text.Json.Serialization;

namespace AutoSweep.Sim.Benches;

/// <summary>The filter behind a pickup coil; which fields count depends on the arrangement (docs/simulated-bench.md).</summary>
internal sealed record FilterDefinition
{
    public required Arrangement Arrangement { get; init; }

    /// <summary>The winding's resistance.</summary>
    public required double Ohms { get; init; }

    /// <summary>The winding's inductance.</summary>
    public required double Henries { get; init; }

    /// <summary>Series: the second winding.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double SecondaryHenries { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double SecondaryOhms { get; init; }

    /// <summary>Series: between the two windings. Coupled: between pickup coil and winding. 0 to below 1.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double CouplingFactor { get; init; }

    /// <summary>Series and coupled: a resistor across the terminal.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double LoadOhms { get; init; }
}
