using System.Text.Json.Serialization;

namespace AutoSweep.Sim.Benches;

/// <summary>The mains that the generator's motor follows.</summary>
internal sealed record MainsDefinition
{
    /// <summary>The mean over a long time.</summary>
    public required double Hertz { get; init; }

    /// <summary>Standard deviation of the slow wander, in per cent.</summary>
    public required double WanderPercent { get; init; }

    /// <summary>The time in which a deviation falls to 1/e.</summary>
    public required double WanderSeconds { get; init; }

    /// <summary>By how much the motor drags behind the mains, in per cent; a sound synchronous motor does not.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public double SlipPercent { get; init; }
}
