using System.Globalization;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Reports;

/// <summary>report.csv: one row an output of the generator, in ascending number. The header is fixed for scripts.</summary>
public static class ReportCsv
{
    private static readonly (string Name, Func<ReportOutput, string> Cell)[] Columns =
    [
        ("output", one => Number(one.Output, "0")),
        ("nominal_hz", one => Number(one.NominalHertz, "0.0000")),
        ("counted_hz", one => Number(one.CountedHertz, "0.0000")),
        ("found_mv", one => Number(one.AsFound?.Millivolts, "0.00000")),
        ("found_db", one => Number(one.AsFound?.Decibels, "0.000")),
        ("recapped_mv", one => Number(one.AfterRecap?.Millivolts, "0.00000")),
        ("recapped_db", one => Number(one.AfterRecap?.Decibels, "0.000")),
        ("left_mv", one => Number(one.AsLeft?.Millivolts, "0.00000")),
        ("left_db", one => Number(one.AsLeft?.Decibels, "0.000")),
        ("old_pf", one => Number(one.OldCapacitor?.MeasuredPicofarads, "0")),
        ("old_nominal_pf", one => Number(one.OldCapacitor?.NominalPicofarads, "0")),
        ("wanted_pf", one => Number(one.Peak?.WantedPicofarads, "0")),
        ("wanted_sd_pf", one => Number(one.Peak?.StandardUncertaintyPicofarads, "0.0")),
        ("parts", one => string.Join(' ', one.Fitted?.Parts ?? [])),
        ("fitted_pf", one => Number(one.Fitted?.MeasuredPicofarads, "0")),
        ("fitted_sd_pf", one => Number(one.Fitted?.StandardUncertaintyPicofarads, "0.0")),
        ("loss_db", one => Number(one.Fitted?.LossDecibels, "0.00000")),
        ("predicted_mv", one => Number(one.Check?.PredictedMillivolts, "0.00000")),
        ("checked_mv", one => Number(one.Check?.MeasuredMillivolts, "0.00000")),
        ("difference_db", one => Number(one.Check?.DifferenceDecibels, "0.000")),
        ("explained", one => one.Check is { } check ? check.IsExplained ? "yes" : "no" : ""),
        ("magnet_moves", one => Number(one.Magnet?.Moves, "0")),
        ("flags_found", one => string.Join(' ', one.FlagsAsFound.Select(SurveyCsv.Name))),
        ("flags_left", one => string.Join(' ', one.FlagsAsLeft.Select(SurveyCsv.Name))),
    ];

    /// <summary>The file's text. A figure that is not known is an empty cell; numbers use a point whatever the machine's culture.</summary>
    public static string Text(JobReport report)
    {
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture, Escape = true }).ToText();
        writer.Header.Add([.. Columns.Select(column => column.Name)]);
        foreach (var output in report.Outputs)
        {
            using var row = writer.NewRow();
            foreach (var (name, cell) in Columns)
                row[name].Set(cell(output));
        }

        return writer.ToString();
    }

    private static string Number(double? value, string format) =>
        value is { } number && double.IsFinite(number) ? number.ToString(format, CultureInfo.InvariantCulture) : "";
}
