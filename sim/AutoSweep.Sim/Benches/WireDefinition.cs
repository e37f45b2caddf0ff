using System.Text.Json.Serialization;

namespace AutoSweep.Sim.Benches;

/// <summary>How the meter's wire misbehaves.</summary>
internal sealed record WireDefinition
{
    /// <summary>Replies leave a few bytes at a time.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Fragmented { get; init; }

    /// <summary>Replies end with CR LF.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool CarriageReturn { get; init; }

    /// <summary>The meter never answers.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Silent { get; init; }

    /// <summary>Every so many replies one comes late; 0 is never.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public int LateEvery { get; init; }

    /// <summary>How late, in simulated seconds.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double LateSeconds { get; init; }
}
