using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>What was soldered in at an output.</summary>
/// <param name="Parts">The parts' ids.</param>
/// <param name="MeasuredPicofarads">What they measured together before they were soldered in, in picofarads.</param>
/// <param name="StandardUncertaintyPicofarads">The standard uncertainty of that in picofarads.</param>
/// <param name="Dissipation">Their dissipation factor together; none where the meter does not tell.</param>
/// <param name="LossDecibels">The expected loss against the peak in decibels.</param>
/// <param name="Meter">The meter; none for a typed value.</param>
/// <param name="Entry">The journal entry.</param>
public sealed record ReportFitted(
    IReadOnlyList<string> Parts, long MeasuredPicofarads, double StandardUncertaintyPicofarads, double? Dissipation, double LossDecibels,
    string? Meter, long? Entry)
{
    /// <summary>What was fitted, with its place in the journal.</summary>
    public static ReportFitted Of(OutputFitted fitted, JournalPlaces places) => new(
        fitted.Parts, fitted.MeasuredPicofarads, fitted.StandardUncertaintyPicofarads, fitted.Dissipation, fitted.LossDecibels, fitted.Meter,
        places.Of(fitted));
}
