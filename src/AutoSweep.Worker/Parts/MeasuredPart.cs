using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Parts;

/// <summary>A part at the meter's clips, read until its readings agreed, or a value that a person typed.</summary>
/// <param name="Capacitance">The mean.</param>
/// <param name="StandardUncertaintyPicofarads">Scatter and the meter's accuracy together, in the manner of the GUM.</param>
/// <param name="Dissipation">The mean dissipation factor; none where the meter gives none.</param>
public sealed record MeasuredPart(Capacitance Capacitance, double StandardUncertaintyPicofarads, double? Dissipation)
{
    /// <summary>A value that a person typed.</summary>
    /// <param name="capacitance">The value.</param>
    /// <param name="accuracyShare">The limit of the meter's error as a share of the reading; counts as rectangular (JCGM 100:2008, 4.3.7).</param>
    public static MeasuredPart Typed(Capacitance capacitance, double accuracyShare) =>
        new(capacitance, accuracyShare * capacitance.Picofarads / Math.Sqrt(3), null);
}
