namespace AutoSweep.Instruments.Meters;

/// <summary>What is wrong with a driver file's values.</summary>
/// <param name="Found">The field and what it holds.</param>
/// <param name="Expected">What it should hold.</param>
internal sealed record DriverProblem(string Found, string Expected);
