namespace AutoSweep.Sim.Commands;

/// <summary>The one line that tells a parent where everything is, once it is; and what anybody sees on the bench, the number of parts in the drawer.</summary>
internal sealed record ReadyLine(
    string Meter, string Fixture, string CapacitanceMeter, string Calibration, string Generator, double ClockRate, double AmplifierGain, int Parts);
