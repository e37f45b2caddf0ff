using System.Text.Json.Serialization;

namespace AutoSweep.Sim.Benches;

/// <summary>One planted fault.</summary>
internal sealed record PlantedFault
{
    /// <summary>The terminal; 0 for a fault of the whole generator or of the bench.</summary>
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

    /// <summary>
    /// How large it is. Drifted: the capacitance over the one at the peak. Open: picofarads. Leaky: loss tangent. Magnets: decibels off the
    /// profile's curve. Wheel: swing in per cent, peak. Hum only: millivolts. Speed: per cent. Loading: ohms.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double Size { get; init; }
}
