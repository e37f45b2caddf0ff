namespace AutoSweep.Sim.Network;

/// <summary>The coupling factor, 0 to below 1, between two inductors of a circuit.</summary>
internal readonly record struct Coupling(int First, int Second, double Factor);
