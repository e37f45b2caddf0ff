namespace AutoSweep.Worker.Commands;

/// <summary>One output's planted fault against the survey's flags.</summary>
/// <param name="Output">The output.</param>
/// <param name="Planted">The planted fault; empty for none.</param>
/// <param name="Flags">The survey's flags.</param>
/// <param name="Found">Whether the two agree.</param>
public sealed record DemoFlagScore(int Output, string Planted, string Flags, bool Found);
