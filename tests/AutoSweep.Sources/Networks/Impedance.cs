using System.Numerics;

namespace AutoSweep.Sources.Networks;

/// <summary>Complex impedances of the parts at one angular frequency.</summary>
internal static class Impedance
{
    internal static Complex Coil(double ohms, double henries, double radiansPerSecond) => new(ohms, radiansPerSecond * henries);

    /// <summary>A capacitor with a constant loss tangent, as dielectrics have.</summary>
    internal static Complex Capacitor(double farads, double lossTangent, double radiansPerSecond) =>
        1 / (radiansPerSecond * farads * new Complex(lossTangent, 1));

    internal static Complex Parallel(Complex a, Complex b) => a * b / (a + b);
}
