using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Reports;

/// <summary>One output's level at one stand of the level curve.</summary>
/// <param name="Millivolts">The level in millivolts rms.</param>
/// <param name="RelativeUncertainty">Its standard uncertainty as a share of it.</param>
/// <param name="TargetMillivolts">What the target asks, scaled by the curve's overall gain, in millivolts rms; none without a target.</param>
/// <param name="Decibels">How many decibels the level lies above that; none where either is missing.</param>
/// <param name="ExpandedUncertaintyDecibels">The expanded uncertainty (95 %) of that in decibels.</param>
/// <param name="Verdict">What may be said of it.</param>
/// <param name="Entry">The journal entry that holds the reading.</param>
public sealed record ReportLevel(
    double Millivolts, double RelativeUncertainty, double? TargetMillivolts, double? Decibels, double ExpandedUncertaintyDecibels,
    CurveVerdict Verdict, long? Entry);
