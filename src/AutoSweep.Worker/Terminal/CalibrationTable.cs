using System.Globalization;
using AutoSweep.Core.Calibration;
using AutoSweep.Worker.Calibration;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>A calibration's result as a table.</summary>
public static class CalibrationTable
{
    /// <summary>Stray and relays with their uncertainties, and what was found.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="solution">The solution.</param>
    public static void Write(IAnsiConsole console, CalibrationSolution solution)
    {
        var table = new Table().Border(TableBorder.Rounded).Title("Calibration, in picofarads")
            .AddColumns("relay", "value", "± (95 %)", "u, noise", "u, meter");
        foreach (var index in Enumerable.Range(2, 3).Prepend(1))
            table.Columns[index].RightAligned();
        Row(table, "stray", solution.Stray);
        foreach (var (index, relay) in solution.Relays.Index())
            Row(table, (index + 1).ToString(CultureInfo.InvariantCulture), relay);
        console.Write(table);
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"Noise of a reading: {100 * solution.Noise.Share:0.0000} % and {solution.Noise.FloorPicofarads:0.000} pF. ")
            + string.Create(
                CultureInfo.InvariantCulture, $"Chance that sound relays scatter so about their sums: {solution.AdditivityProbability:0.00}."));
        foreach (var finding in solution.Findings)
            console.MarkupLineInterpolated($"[bold yellow]Found:[/] {FindingText.Of(finding)}");
    }

    /// <summary>The points of a check.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="points">The points.</param>
    public static void Write(IAnsiConsole console, IEnumerable<CheckedPoint> points)
    {
        var table = new Table().Border(TableBorder.Rounded).Title("Check, in picofarads")
            .AddColumns("closed", "calibrated", "measured", "difference", "allowed", "holds");
        foreach (var index in Enumerable.Range(1, 4))
            table.Columns[index].RightAligned();
        foreach (var point in points)
            table.AddRow(
                CheckWords.Set(point.Closed), Text(point.ExpectedPicofarads), Text(point.MeasuredPicofarads),
                point.DifferencePicofarads.ToString("+0.000;-0.000", CultureInfo.InvariantCulture), Text(point.LimitPicofarads),
                point.Holds ? "yes" : "NO");
        console.Write(table);
    }

    private static void Row(Table table, string name, CalibratedValue value) => table.AddRow(
        name, Text(value.Picofarads), Text(value.ExpandedUncertainty), Text(value.NoiseStandardUncertainty),
        Text(value.MeterStandardUncertainty));

    private static string Text(double picofarads) => picofarads.ToString("0.000", CultureInfo.InvariantCulture);
}
