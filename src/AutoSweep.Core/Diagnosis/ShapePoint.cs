namespace AutoSweep.Core.Diagnosis;

/// <summary>An output against the shape of the curve.</summary>
/// <param name="One">The output.</param>
/// <param name="Decibels">How many decibels it lies above the shape.</param>
/// <param name="Scale">The generator's own scatter on this side of its filters: one standard deviation in decibels.</param>
/// <param name="Limit">How many decibels off the shape an output must be to be no member of the others.</param>
internal readonly record struct ShapePoint(OutputEvidence One, double Decibels, double Scale, double Limit);
