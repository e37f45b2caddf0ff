using System.Globalization;
using AutoSweep.Core.Curve;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Curves;

/// <summary>A level curve as CSV: commas, points, levels in millivolts rms; what <see cref="CurveCsvReader"/> reads back as it was.</summary>
public static class CurveCsv
{
    /// <summary>The columns. The header is fixed for scripts.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["output", "level_mv", "tolerance_db"];

    /// <summary>The file's text.</summary>
    public static string Text(TargetCurve curve)
    {
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture }).ToText();
        writer.Header.Add([.. Columns]);
        foreach (var point in curve.Points)
        {
            using var row = writer.NewRow();
            row[Columns[0]].Format(point.Output);
            row[Columns[1]].Set(point.Millivolts.ToString("0.######", CultureInfo.InvariantCulture));
            row[Columns[2]].Set(point.ToleranceDecibels.ToString("0.###", CultureInfo.InvariantCulture));
        }

        return writer.ToString();
    }
}
