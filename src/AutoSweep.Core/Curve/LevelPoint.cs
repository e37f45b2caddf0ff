namespace AutoSweep.Core.Curve;

/// <summary>One output's level on a level curve.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Millivolts">The level in millivolts rms at the terminal; 0 for a dead output.</param>
/// <param name="RelativeUncertainty">One standard deviation of it as a share of the level: noise and meter together.</param>
public sealed record LevelPoint(int Output, double Millivolts, double RelativeUncertainty);
