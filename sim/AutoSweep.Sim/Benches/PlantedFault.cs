using System.Text.Json.Serialization;

namespace AutoSweep.Sim.Benches;

/// <summary>One planted fault.</summary>
internal sealed record PlantedFault
{
    public required int Output { get; init; }

    public required FaultKind Kind { get; init; }

    /// <summary>Swapped: the other terminal.</summary>
    public int? Partner { get; init; }

    /// <summary>Unsteady: swing of the level in per cent, peak.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double SwingPercent { get; init; }

    /// <summary>Unsteady: swings a second.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double SwingHertz { get; init; }
}
