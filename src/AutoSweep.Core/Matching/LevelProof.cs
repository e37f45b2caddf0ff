using System.Text.Json.Serialization;

namespace AutoSweep.Core.Matching;

/// <summary>What was reached at one level of cost, and what is proven to be out of reach.</summary>
/// <param name="Value">The cost reached.</param>
/// <param name="Bound">No solution that is as good at the levels before costs less than this.</param>
public sealed record LevelProof(long Value, long Bound)
{
    /// <summary>Whether nothing better exists.</summary>
    [JsonIgnore]
    public bool IsProven => Value <= Bound;

    /// <summary>How far from the best the value can be at most, as a share of the value; 0 when proven.</summary>
    [JsonIgnore]
    public double Gap => IsProven ? 0 : (Value - Bound) / (double)Math.Max(1, Math.Abs(Value));
}
