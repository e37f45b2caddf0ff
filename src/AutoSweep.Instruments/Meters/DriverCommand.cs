using System.ComponentModel;

namespace AutoSweep.Instruments.Meters;

/// <summary>A command of a driver.</summary>
public sealed record DriverCommand
{
    /// <summary>What is sent; may hold <c>{range}</c>, <c>{bandwidth}</c>, <c>{aperture}</c> and <c>{frequency}</c>.</summary>
    [Description("What is sent. {range} stands for the range in volts, {bandwidth} for hertz, {aperture} for the gate in seconds, "
        + "{frequency} for the test frequency in hertz.")]
    public required string Command { get; init; }

    /// <summary>True: the driver cannot do without it. False: a meter that refuses it (by its error queue) is used without it.</summary>
    [Description("true: the driver cannot do without it. false: a meter that refuses it is used without it.")]
    public required bool Required { get; init; }

    /// <summary>What it is for, where that is not plain.</summary>
    [Description("What it is for, where that is not plain.")]
    public string? Why { get; init; }
}
