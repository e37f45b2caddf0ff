namespace AutoSweep.Instruments.Meters;

/// <summary>How a family reads the AC level.</summary>
public sealed record DriverLevel
{
    /// <summary>The commands that choose function, range and bandwidth, in the meter's order.</summary>
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>The AC ranges in volts rms, ascending.</summary>
    public required IReadOnlyList<double> RangesVolts { get; init; }

    /// <summary>How far beyond its name a range reads: 1.2 for 20 % more.</summary>
    public required double OverRange { get; init; }

    /// <summary>The detector bandwidths, ascending.</summary>
    public required IReadOnlyList<DriverBandwidth> Bandwidths { get; init; }

    /// <summary>How long the detector takes to settle when the meter refuses the bandwidth command, in seconds.</summary>
    public required double SettleWithoutBandwidthSeconds { get; init; }

    /// <summary>The query that takes one reading.</summary>
    public required string Read { get; init; }
}
