using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>An output's level with its new capacitors against what its sweep predicted.</summary>
/// <param name="PredictedMillivolts">The prediction in millivolts rms.</param>
/// <param name="MeasuredMillivolts">The level in millivolts rms, hum taken out.</param>
/// <param name="DifferenceDecibels">How many decibels it lies above the prediction; none without a level.</param>
/// <param name="StandardUncertaintyDecibels">The standard uncertainty of the difference in decibels.</param>
/// <param name="IsExplained">Whether noise and slow change explain the difference.</param>
/// <param name="Entry">The journal entry.</param>
public sealed record ReportCheck(
    double PredictedMillivolts, double MeasuredMillivolts, double? DifferenceDecibels, double StandardUncertaintyDecibels, bool IsExplained,
    long? Entry)
{
    /// <summary>A check, with its place in the journal.</summary>
    public static ReportCheck Of(OutputChecked seen, JournalPlaces places) => new(
        seen.PredictedMillivolts, seen.Millivolts, double.IsFinite(seen.DifferenceDecibels) ? seen.DifferenceDecibels : null,
        seen.StandardUncertaintyDecibels, seen.IsExplained, places.Of(seen));
}
