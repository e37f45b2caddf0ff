using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Parts;

/// <summary>A part at the meter's clips, read until its readings agreed, or a value that a person typed.</summary>
/// <param name="Capacitance">The mean.</param>
/// <param name="StandardUncertaintyPicofarads">Scatter and the meter's accuracy together, in the manner of the GUM.</param>
/// <param name="Dissipation">The mean dissipation factor; none where the meter gives none.</param>
public sealed record MeasuredPart(Capacitance Capacitance, double StandardUncertaintyPicofarads, double? Dissipation);
