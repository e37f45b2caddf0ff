using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family takes a series of level samples that it spaces evenly by itself.</summary>
public sealed record DriverBurst
{
    /// <summary>The commands that turn a level set-up into one for a series, in the meter's order.</summary>
    [Description("The commands that turn a level set-up, already sent, into one for a series: fast detector, fixed delay, number of samples.")]
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>How many samples a series has.</summary>
    [Description("How many samples a series has."), Range(8, 512)]
    public required int Samples { get; init; }

    /// <summary>From one sample to the next, in seconds.</summary>
    [Description("From one sample to the next, in seconds."), Range(0.0001, 1)]
    public required double IntervalSeconds { get; init; }

    /// <summary>How long a sample averages, in seconds.</summary>
    [Description("How long a sample averages, in seconds."), Range(0, 1)]
    public required double ApertureSeconds { get; init; }

    /// <summary>The time constant of the detector in this set-up, in seconds.</summary>
    [Description("The time constant of the detector in this set-up, in seconds."), Range(0, 10)]
    public required double TimeConstantSeconds { get; init; }

    /// <summary>How long the detector takes to settle after this set-up, in seconds.</summary>
    [Description("How long the detector takes to settle after this set-up, in seconds."), Range(0, 60)]
    public required double SettleSeconds { get; init; }

    /// <summary>Where these figures are published, or how they were measured.</summary>
    [Description("Where these figures are published, or how they were measured.")]
    public required string Source { get; init; }

    /// <summary>The query that takes the series; its reply holds the samples, with commas between them.</summary>
    [Description("The query that takes the series; its reply holds the samples, with commas between them.")]
    public required string Read { get; init; }
}
