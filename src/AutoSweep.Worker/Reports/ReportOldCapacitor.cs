using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>The capacitor that was taken off an output.</summary>
/// <param name="MeasuredPicofarads">What it measured in picofarads; none where it no longer measures as a capacitor.</param>
/// <param name="StandardUncertaintyPicofarads">The standard uncertainty of that in picofarads; 0 where nothing is known.</param>
/// <param name="NominalPicofarads">Its printed value in picofarads; none where it could not be read.</param>
/// <param name="Note">What was odd about it.</param>
public sealed record ReportOldCapacitor(long? MeasuredPicofarads, double StandardUncertaintyPicofarads, long? NominalPicofarads, string? Note)
{
    /// <summary>How far it had drifted from its printed value, in per cent; none where either is missing.</summary>
    public double? DriftPercent => NominalPicofarads is > 0 ? 100.0 * (MeasuredPicofarads - NominalPicofarads) / NominalPicofarads : null;

    /// <summary>What the ledger says of an output's old capacitor; none where nothing is logged.</summary>
    public static ReportOldCapacitor? Of(OldCapacitorRemoved? removed) => removed is null ? null : new(
        removed.Measured?.Picofarads, removed.Measured?.UncertaintyPicofarads ?? 0, removed.NominalPicofarads, removed.Note);
}
