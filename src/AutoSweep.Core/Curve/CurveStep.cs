namespace AutoSweep.Core.Curve;

/// <summary>A place within a group where the whole curve steps up or down: the end of a loud low octave, say.</summary>
/// <param name="Below">The last output before the step.</param>
/// <param name="Above">The first output after it.</param>
/// <param name="Decibels">How many decibels the curve goes up there.</param>
public sealed record CurveStep(int Below, int Above, double Decibels);
