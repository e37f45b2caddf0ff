namespace AutoSweep.Worker.Commands;

/// <summary>One output's peak against the truth.</summary>
/// <param name="Output">The output.</param>
/// <param name="TruePicofarads">Where the simulated filter really peaks.</param>
/// <param name="ErrorInHalfWidths">Found less true, in true half-power half-widths.</param>
/// <param name="LossDecibels">Level lost at the found peak.</param>
public sealed record DemoOutputScore(int Output, double TruePicofarads, double ErrorInHalfWidths, double LossDecibels);
