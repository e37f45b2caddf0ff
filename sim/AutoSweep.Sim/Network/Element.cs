using System.Numerics;

namespace AutoSweep.Sim.Network;

/// <summary>A resistor (ohms) or capacitor (farads) between two nodes.</summary>
internal readonly record struct Element(ElementKind Kind, int From, int To, double Value, double LossTangent)
{
    public Complex Admittance(double omega) => Kind == ElementKind.Resistor
        ? 1 / Value
        : new Complex(LossTangent, 1) * omega * Value;
}
