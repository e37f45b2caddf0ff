using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Reports;

/// <summary>sweeps.csv: one row a swept output, in ascending number. The header is fixed for scripts.</summary>
public static class SweepsCsv
{
    /// <summary>The file's text.</summary>
    /// <remarks>A figure that a sweep could not give is an empty cell. Numbers use a point whatever the machine's culture.</remarks>
    public static string Text(JobState state)
    {
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture }).ToText();
        writer.Header.Add("output", "tone_hz", "peak_pf", "peak_sd_pf", "half_width_pf", "q", "level_mv", "readings", "stop_reason");
        foreach (var swept in state.Swept.Values)
        {
            using var row = writer.NewRow();
            row["output"].Format(swept.Output);
            row["tone_hz"].Set(Number(swept.ToneHertz, "0.0000"));
            row["peak_pf"].Set(Number(swept.PeakPicofarads, "0"));
            row["peak_sd_pf"].Set(Number(swept.PeakSdPicofarads, "0.0"));
            row["half_width_pf"].Set(Number(swept.HalfWidthPicofarads, "0.0"));
            row["q"].Set(Number(swept.Q, "0.000"));
            row["level_mv"].Set(Number(swept.PeakMillivolts, "0.00000"));
            row["readings"].Format(swept.Readings);
            row["stop_reason"].Set(Name(swept.Reason));
        }

        return writer.ToString();
    }

    /// <summary>A reason's name in files.</summary>
    public static string Name(PeakStopReason reason) => reason switch
    {
        PeakStopReason.BoundReached => "bound_reached",
        PeakStopReason.BudgetSpent => "budget_spent",
        PeakStopReason.NoPeakInRange => "no_peak_in_range",
        PeakStopReason.PeakAtEdge => "peak_at_edge",
        PeakStopReason.ResponseFlat => "response_flat",
        PeakStopReason.ModelDoesNotHold => "model_does_not_hold",
        _ => "level_lost",
    };

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}
