namespace AutoSweep.Instruments.Meters;

/// <summary>A command of a driver.</summary>
/// <param name="Command">What is sent; may hold <c>{range}</c>, <c>{bandwidth}</c> and <c>{aperture}</c>.</param>
/// <param name="Required">True: the driver cannot do without it. False: a meter that refuses it (by its error queue) is used without it.</param>
/// <param name="Why">What it is for, where that is not plain.</param>
public sealed record DriverCommand(string Command, bool Required, string? Why = null);
