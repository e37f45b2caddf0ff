namespace AutoSweep.Core.Diagnosis;

/// <summary>An output against the shape of the curve.</summary>
/// <param name="One">The output.</param>
/// <param name="Decibels">How many decibels it lies above the shape.</param>
internal readonly record struct ShapePoint(OutputEvidence One, double Decibels);
