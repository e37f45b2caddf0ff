using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Core.Generator;

/// <summary>One terminal of the generator, with the wheel that makes its tone and the filter that it passes.</summary>
public sealed record GeneratorOutput
{
    /// <summary>The terminal's number, from 1.</summary>
    [Description("The terminal's number, from 1; ascending in the file."), Range(1, 999)]
    public required int Number { get; init; }

    /// <summary>The name of the gear train that drives the wheel.</summary>
    [Description("The name of the gear train that drives the wheel.")]
    public required string GearTrain { get; init; }

    /// <summary>Teeth (high points) of the wheel.</summary>
    [Description("Teeth (high points) of the wheel."), Range(1, 10_000)]
    public required int WheelTeeth { get; init; }

    /// <summary>What stands between the pickup coil and the terminal.</summary>
    [Description("What stands between pickup coil and terminal: none, transformer (no capacitor), tunedLc, or retrofitLc (added later).")]
    public required FilterKind Filter { get; init; }

    /// <summary>Outputs of one group share coil and filter family: what is learnt of one says something of the next.</summary>
    [Description("A name of your own for the outputs that share a coil and filter family: a sweep learns from one for the next.")]
    public required string Group { get; init; }

    /// <summary>The filter's capacitor, or none where the output has no tuned filter.</summary>
    [Description("The filter's capacitor: given for tunedLc and retrofitLc, left out for none and transformer.")]
    public FilterCapacitor? Capacitor { get; init; }

    /// <summary>The level that a healthy generator of this kind gives here in millivolts rms, where it is known.</summary>
    [Description("The level of a healthy generator here in millivolts rms, where it is known."), Range(0.001, 10_000)]
    public double? ExpectedMillivolts { get; init; }
}
