using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>One terminal of the generator, with the wheel that makes its tone and the filter that it passes.</summary>
public sealed record GeneratorOutput
{
    /// <summary>The terminal's number, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The name of the gear train that drives the wheel.</summary>
    public required string GearTrain { get; init; }

    /// <summary>Teeth (high points) of the wheel.</summary>
    public required int WheelTeeth { get; init; }

    /// <summary>What stands between the pickup coil and the terminal.</summary>
    public required FilterKind Filter { get; init; }

    /// <summary>Outputs of one group share coil and filter family: what is learnt of one says something of the next.</summary>
    public required string Group { get; init; }

    /// <summary>The filter's capacitor, or none where the output has no tuned filter.</summary>
    public FilterCapacitor? Capacitor { get; init; }

    /// <summary>The level that a healthy generator of this kind gives here in millivolts rms, where it is known.</summary>
    public double? ExpectedMillivolts { get; init; }
}
