using System.Globalization;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Reports;

/// <summary>picking-list.csv: one row a part, by bin. The header is fixed for scripts.</summary>
public static class PickingListCsv
{
    /// <summary>The file's text.</summary>
    public static string Text(PickingList list)
    {
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture, Escape = true })
            .ToText();
        writer.Header.Add("bin", "part", "measured_pf", "nominal_pf", "output", "wanted_pf", "sum_pf", "loss_db");
        foreach (var pick in list.Rows)
        {
            using var row = writer.NewRow();
            row["bin"].Set(pick.Bin);
            row["part"].Set(pick.Part);
            row["measured_pf"].Format(pick.MeasuredPicofarads);
            row["nominal_pf"].Set(pick.NominalPicofarads?.ToString(CultureInfo.InvariantCulture) ?? "");
            row["output"].Format(pick.Output);
            row["wanted_pf"].Format(pick.WantedPicofarads);
            row["sum_pf"].Format(pick.SumPicofarads);
            row["loss_db"].Set(pick.LossDecibels.ToString("0.00000", CultureInfo.InvariantCulture));
        }

        return writer.ToString();
    }
}
