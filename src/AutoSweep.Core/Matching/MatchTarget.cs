using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Matching;

/// <summary>The capacitance that an output wants, and how much it minds another.</summary>
public sealed record MatchTarget
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The calibrated peak at nominal mains frequency.</summary>
    public required Capacitance Wanted { get; init; }

    /// <summary>The half-power half-width in picofarads: half the distance between the capacitances at which 3.01 dB are lost; above
    /// 0.</summary>
    public required double HalfWidthPicofarads { get; init; }

    /// <summary>One standard deviation of <see cref="Wanted"/> in picofarads.</summary>
    public double SdPicofarads { get; init; }

    /// <summary>The rated voltage that a part must have in volts; 0 where any will do, also one whose rating is not known.</summary>
    public double RequiredVolts { get; init; }

    /// <summary>How the level depends on the capacitance; unknown and general count as shunt.</summary>
    public ResponseLaw Law { get; init; }
}
