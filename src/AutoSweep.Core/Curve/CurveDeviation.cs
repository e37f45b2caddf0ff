namespace AutoSweep.Core.Curve;

/// <summary>One output's level against its target, overall gain taken out.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Millivolts">The level in millivolts rms.</param>
/// <param name="TargetMillivolts">The target, scaled by the overall gain, in millivolts rms; none without a target.</param>
/// <param name="Decibels">How many decibels the level lies above it; none where either is missing.</param>
/// <param name="UncertaintyDecibels">The expanded uncertainty (95 %) of that in decibels.</param>
/// <param name="ToleranceDecibels">What is allowed to either side in decibels.</param>
/// <param name="Verdict">What may be said of it.</param>
public sealed record CurveDeviation(
    int Output, double Millivolts, double? TargetMillivolts, double? Decibels, double UncertaintyDecibels, double ToleranceDecibels, CurveVerdict Verdict);
