namespace AutoSweep.Sim.Scpi;

/// <summary>The numbers that a parameter takes, and the unit that may stand behind them.</summary>
internal sealed record NumberRange(double Least, double Most, double Default, string Unit = "");
