namespace AutoSweep.Sim.Network;

/// <summary>The elements that a network is made of beside inductors.</summary>
internal enum ElementKind
{
    Resistor,
    Capacitor,
}
