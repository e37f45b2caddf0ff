using System.Globalization;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.Reports;

/// <summary>What the record says of outputs that were swept without a counted tone.</summary>
public static class ReportMains
{
    /// <summary>The sentence; none where every peak has its tone.</summary>
    public static string? Text(JobReport report)
    {
        List<int> assumed = [.. report.Outputs.Where(one => one.Peak is { MainsTakenAsNominal: true }).Select(one => one.Output)];
        return assumed.Count == 0 ? null : string.Create(CultureInfo.InvariantCulture,
            $"No tone was counted while {(assumed.Count == 1 ? "output" : "outputs")} {OutputRanges.Text(assumed)} {(assumed.Count == 1 ? "was" : "were")} swept: ")
            + string.Create(CultureInfo.InvariantCulture,
                $"the mains were taken as nominal, within ±{100 * NominalPeak.StandardFrequencyRange:0.0} %, and that is in the stated uncertainty.");
    }
}
