using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>A tuned output's linear network at its tone, driven by an emf of 1 V.</summary>
public interface INetwork
{
    /// <summary>The complex output voltage with a capacitor of this many farads fitted.</summary>
    Complex Output(double farads);
}
