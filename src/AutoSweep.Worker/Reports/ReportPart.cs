using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>A capacitor of the stock that was fitted.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Output">The output that has it now.</param>
/// <param name="MeasuredPicofarads">What it measured alone, in picofarads; none where its ledger is not at hand.</param>
/// <param name="StandardUncertaintyPicofarads">The standard uncertainty of that in picofarads.</param>
/// <param name="NominalPicofarads">Its printed value in picofarads.</param>
/// <param name="Dielectric">Its dielectric.</param>
/// <param name="RatedVolts">Its rated voltage in volts.</param>
public sealed record ReportPart(
    string Id, int Output, long? MeasuredPicofarads, double? StandardUncertaintyPicofarads, long? NominalPicofarads, string? Dielectric,
    double? RatedVolts)
{
    /// <summary>The parts of a job, by output.</summary>
    public static IReadOnlyList<ReportPart> Of(JobState state, StockState? stock) =>
        [.. state.Fitted.Values.SelectMany(fitted => fitted.Parts.Select(id => Of(id, fitted.Output, stock?.Parts.GetValueOrDefault(id))))];

    private static ReportPart Of(string id, int output, Part? part) => new(
        id, output, part?.Measured.Picofarads, part?.Measured.UncertaintyPicofarads, part?.NominalPicofarads, part?.Dielectric, part?.RatedVolts);
}
