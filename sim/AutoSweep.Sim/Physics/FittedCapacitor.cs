using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Physics;

/// <summary>What is soldered in an output's filter after the job.</summary>
/// <param name="Farads">Its true capacitance.</param>
/// <param name="LossTangent">Its loss tangent.</param>
internal readonly record struct FittedCapacitor(double Farads, double LossTangent)
{
    /// <summary>Parts in parallel: capacitances and conductances add, so the loss tangent is their mean, weighted by capacitance.</summary>
    public static FittedCapacitor Parallel(IReadOnlyCollection<PartDefinition> parts)
    {
        var picofarads = parts.Sum(part => part.Picofarads);
        return new(picofarads * 1e-12, parts.Sum(part => part.Picofarads * part.LossTangent) / picofarads);
    }
}
