using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>A tapped coil: the level is taken at the tap, behind it the rest of the coil and the capacitor, which make a trap above the peak.</summary>
public sealed record TappedNetwork(
    double RadiansPerSecond,
    double UpperOhms,
    double UpperHenries,
    double LowerOhms,
    double LowerHenries,
    double LoadOhms,
    double LossTangent) : INetwork
{
    /// <inheritdoc/>
    public Complex Output(double farads)
    {
        var lower = Impedance.Coil(LowerOhms, LowerHenries, RadiansPerSecond) + Impedance.Capacitor(farads, LossTangent, RadiansPerSecond);
        var loaded = Impedance.Parallel(lower, LoadOhms);
        return loaded / (Impedance.Coil(UpperOhms, UpperHenries, RadiansPerSecond) + loaded);
    }
}
