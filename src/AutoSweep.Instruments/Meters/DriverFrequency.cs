using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family counts the frequency.</summary>
public sealed record DriverFrequency
{
    /// <summary>The commands that choose function, input range and gate time, in the meter's order.</summary>
    [Description("The commands that choose function, input range and gate time, in the meter's order.")]
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>The gate time in seconds.</summary>
    [Description("The gate time in seconds."), Range(0.001, 10)]
    public required double ApertureSeconds { get; init; }

    /// <summary>How long to wait after the function is chosen, before the first count, in seconds.</summary>
    [Description("How long to wait after the function is chosen, before the first count, in seconds."), Range(0, 60)]
    public required double SettleSeconds { get; init; }

    /// <summary>How long the counter may wait for a signal that is not there, before it answers all the same.</summary>
    /// <value>Default 0. Only lengthens the time-out.</value>
    [Description("How long the counter may wait for a signal that is not there, before it answers all the same. Default 0."), Range(0, 60)]
    public double NoSignalSeconds { get; init; }

    /// <summary>Where the waiting time is published or how it was found.</summary>
    [Description("Where the waiting time is published or how it was found.")]
    public required string Source { get; init; }

    /// <summary>The query that takes one count.</summary>
    [Description("The query that takes one count.")]
    public required string Read { get; init; }
}
