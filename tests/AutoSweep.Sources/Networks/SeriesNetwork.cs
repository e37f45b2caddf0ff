using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>Pickup coil, capacitor and filter winding in series; the level is taken across the winding and its load.</summary>
public sealed record SeriesNetwork(
    double RadiansPerSecond,
    double PickupOhms,
    double PickupHenries,
    double WindingOhms,
    double WindingHenries,
    double LoadOhms,
    double LossTangent) : INetwork
{
    /// <inheritdoc/>
    public Complex Output(double farads)
    {
        var pickup = Impedance.Coil(PickupOhms, PickupHenries, RadiansPerSecond);
        var winding = Impedance.Parallel(Impedance.Coil(WindingOhms, WindingHenries, RadiansPerSecond), LoadOhms);
        return winding / (pickup + Impedance.Capacitor(farads, LossTangent, RadiansPerSecond) + winding);
    }
}
