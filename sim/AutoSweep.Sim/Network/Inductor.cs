namespace AutoSweep.Sim.Network;

/// <summary>An inductor between two nodes; the first is the dotted end.</summary>
internal readonly record struct Inductor(int From, int To, double Henries);
