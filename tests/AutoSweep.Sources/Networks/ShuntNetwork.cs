using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>A coil with the capacitor across it; the level is taken across the capacitor and its load.</summary>
public sealed record ShuntNetwork(double RadiansPerSecond, double Ohms, double Henries, double LoadOhms, double LossTangent) : INetwork
{
    /// <inheritdoc/>
    public Complex Output(double farads)
    {
        var capacitor = Impedance.Parallel(Impedance.Capacitor(farads, LossTangent, RadiansPerSecond), LoadOhms);
        return capacitor / (Impedance.Coil(Ohms, Henries, RadiansPerSecond) + capacitor);
    }
}
