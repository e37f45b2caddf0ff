namespace AutoSweep.Core.Stock;

/// <summary>A part promised to an output.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Output">The output's number.</param>
public sealed record PartReservation(string Part, int Output);
