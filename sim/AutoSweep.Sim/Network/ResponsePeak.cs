namespace AutoSweep.Sim.Network;

/// <summary>Where an output is loudest over capacitance.</summary>
/// <param name="Farads">The capacitance of the peak.</param>
/// <param name="Gain">Level there for an emf of 1 V.</param>
/// <param name="LowerFarads">The half-power point below, or none above zero.</param>
/// <param name="UpperFarads">The half-power point above, or none.</param>
internal readonly record struct ResponsePeak(double Farads, double Gain, double? LowerFarads, double? UpperFarads)
{
    /// <summary>Half the distance between the half-power points; the one flank's width where there is one point only.</summary>
    public double HalfWidthFarads => (LowerFarads, UpperFarads) switch
    {
        ({ } lower, { } upper) => (upper - lower) / 2,
        (null, { } upper) => upper - Farads,
        ({ } lower, null) => Farads - lower,
        _ => double.PositiveInfinity,
    };
}
