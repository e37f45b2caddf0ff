namespace AutoSweep.Sim.Scoring;

/// <summary>What a survey said of one output that has a planted fault, or that it flagged without one.</summary>
/// <param name="Output">The terminal.</param>
/// <param name="Planted">The planted fault, or none.</param>
/// <param name="Flags">The survey's flags.</param>
/// <param name="Found">Whether the two agree.</param>
internal sealed record FlagScore(int Output, string Planted, string Flags, bool Found);
