using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family reads the AC level.</summary>
public sealed record DriverLevel
{
    /// <summary>The commands that choose function, range and bandwidth, in the meter's order.</summary>
    [Description("The commands that choose function, range and bandwidth, in the meter's order.")]
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>The AC ranges in volts rms, ascending.</summary>
    [Description("The AC ranges in volts rms, ascending.")]
    public required IReadOnlyList<double> RangesVolts { get; init; }

    /// <summary>What the meter calls the ranges, in the same order, where its command takes no volts; fills <c>{range}</c>.</summary>
    /// <value>Default empty: it takes volts.</value>
    [Description("What the meter calls the ranges, in the same order, where its command takes no volts; fills {range}. Default empty: it takes volts.")]
    public IReadOnlyList<string> RangeArguments { get; init; } = [];

    /// <summary>How far beyond its name a range reads: 1.2 for 20 % more.</summary>
    [Description("How far beyond its name a range reads: 1.2 for 20 % more."), Range(1, 2)]
    public required double OverRange { get; init; }

    /// <summary>The detector bandwidths, ascending.</summary>
    [Description("The detector bandwidths, ascending.")]
    public required IReadOnlyList<DriverBandwidth> Bandwidths { get; init; }

    /// <summary>How long the detector takes to settle when the meter refuses the bandwidth command, in seconds.</summary>
    [Description("How long the detector takes to settle when the meter refuses the bandwidth command, in seconds."), Range(0, 60)]
    public required double SettleWithoutBandwidthSeconds { get; init; }

    /// <summary>The limits of the level's error, where they are published.</summary>
    [Description("The limits of the level's error, where they are published.")]
    public DriverLevelAccuracy? Accuracy { get; init; }

    /// <summary>How it takes a series of samples, for swings of the level.</summary>
    /// <value>Default null: it cannot.</value>
    [Description("How it takes a series of samples, for swings of the level. Default null: it cannot.")]
    public DriverBurst? Burst { get; init; }

    /// <summary>The query that takes one reading.</summary>
    [Description("The query that takes one reading.")]
    public required string Read { get; init; }
}
