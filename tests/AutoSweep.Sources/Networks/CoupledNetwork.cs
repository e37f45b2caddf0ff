using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>
/// Pickup coil and capacitor feed a leaky transformer's primary; the level is taken at the loaded secondary, into which the wheel also
/// induces a little directly. That stray emf shifts the trap away from zero capacitance, so neither the series nor the shunt law holds exactly.
/// </summary>
/// <param name="StrayEmf">The emf induced directly into the secondary, as a share of the pickup's; its sign is the winding's sense.</param>
public sealed record CoupledNetwork(
    double RadiansPerSecond,
    double PickupOhms,
    double PickupHenries,
    double PrimaryOhms,
    double PrimaryHenries,
    double SecondaryOhms,
    double SecondaryHenries,
    double Coupling,
    double LoadOhms,
    double StrayEmf,
    double LossTangent) : INetwork
{
    /// <inheritdoc/>
    public Complex Output(double farads)
    {
        // Two meshes: z11 i1 + z12 i2 = 1, z12 i1 + z22 i2 = stray.
        var z11 = Impedance.Coil(PickupOhms + PrimaryOhms, PickupHenries + PrimaryHenries, RadiansPerSecond)
            + Impedance.Capacitor(farads, LossTangent, RadiansPerSecond);
        var z22 = Impedance.Coil(SecondaryOhms + LoadOhms, SecondaryHenries, RadiansPerSecond);
        var z12 = new Complex(0, RadiansPerSecond * Coupling * Math.Sqrt(PrimaryHenries * SecondaryHenries));
        return LoadOhms * (z11 * StrayEmf - z12) / (z11 * z22 - z12 * z12);
    }
}
