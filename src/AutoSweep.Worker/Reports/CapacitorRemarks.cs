using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.Reports;

/// <summary>What is to be remarked of an output's filter and its capacitors, in a record's words.</summary>
public static class CapacitorRemarks
{
    /// <summary>The words, separated by semicolons; empty where all went as it should.</summary>
    public static string Text(ReportOutput one) => string.Join("; ", Of(one));

    private static IEnumerable<string> Of(ReportOutput one)
    {
        if (one.OldCapacitor is { } old)
        {
            if (old.MeasuredPicofarads is null)
                yield return "old one no longer a capacitor";
            if (old.DriftPercent is { } drift)
                yield return $"old one {ReportFigures.Decibels(drift, 0.25)} %";
            if (old.Note is { } note)
                yield return note;
        }

        if (one.Peak is { } peak && peak.Reason != PeakStopReason.BoundReached)
            yield return Words(peak.Reason);
        if (one.Check is { IsExplained: false })
            yield return "difference not explained";
    }

    private static string Words(PeakStopReason reason) => reason switch
    {
        PeakStopReason.BudgetSpent => "sweep out of readings",
        PeakStopReason.NoPeakInRange => "no peak within the fixture's range",
        PeakStopReason.PeakAtEdge => "peak at the edge of the fixture's range",
        PeakStopReason.ResponseFlat => "level does not depend on the capacitor",
        PeakStopReason.ModelDoesNotHold => "shape unlike a filter's",
        _ => "level lost during the sweep",
    };
}
