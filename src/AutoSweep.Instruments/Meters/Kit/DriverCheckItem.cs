namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>One part of the check of a driver folder.</summary>
/// <param name="Name">What was checked: a file's or a folder's name.</param>
/// <param name="Says">What was looked at, in a few words and figures.</param>
/// <param name="Faults">What is wrong; empty when all is in order.</param>
public sealed record DriverCheckItem(string Name, string Says, IReadOnlyList<DriverFault> Faults);
