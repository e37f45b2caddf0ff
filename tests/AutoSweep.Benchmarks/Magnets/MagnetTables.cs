using System.Globalization;
using AutoSweep.Core.Magnets;
using AutoSweep.Sources;
using AutoSweep.Sources.Magnets;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Magnets;

/// <summary>The tables for people.</summary>
internal static class MagnetTables
{
    internal static Table Ways(IReadOnlyList<MagnetRow> rows)
    {
        var table = Titled("A thousand rods, 1 to 6 dB off", "way", "contacts", "of reachable", "median moves, reachable rods", "too loud", "too soft",
            "in band %", "refused %", "other %",
            "true error p95 dB");
        foreach (var row in rows)
        {
            var (score, can) = (row.Score, row.Score.Reachable);
            var (inBand, refused) = (RodScore.Share(can, GuidanceEnding.InBand), RodScore.Share(can, GuidanceEnding.NearContact));
            table.AddRow(row.Way, Text(score.Contacts), Text(can.Count(run => run.Touched)), Text(score.MedianMoves(can)),
                Text(score.MedianMoves([.. can.Where(run => run.Truth.StartDecibels > 0)])),
                    Text(score.MedianMoves([.. can.Where(run => run.Truth.StartDecibels < 0)])),
                Text(100 * inBand, "0.0"), Text(100 * refused, "0.0"), Text(100 * (1 - inBand - refused), "0.0"), Text(Error(can), "0.00"));
        }

        return table;
    }

    internal static Table Teeth(RodScore score)
    {
        var table = Titled("Guided, by wheel", "teeth", "rods", "reachable", "in band %", "refused %", "spent %", "median moves", "p90 moves");
        foreach (var wheel in score.Runs.GroupBy(run => run.Truth.WheelTeeth).OrderBy(wheel => wheel.Key))
        {
            RodRun[] can = [.. score.Reachable.Where(run => run.Truth.WheelTeeth == wheel.Key)];
            table.AddRow(Text(wheel.Key), Text(wheel.Count()), Text(can.Length), Text(100 * RodScore.Share(can, GuidanceEnding.InBand), "0"),
                Text(100 * RodScore.Share(can, GuidanceEnding.NearContact), "0"), Text(100 * RodScore.Share(can, GuidanceEnding.BudgetSpent), "0"),
                Text(score.MedianMoves(can)), Text(SearchScore.Quantile(0.9,
                    can.Select(run => run.Ending == GuidanceEnding.InBand ? run.Moves : double.PositiveInfinity))));
        }

        return table;
    }

    private static double Error(IReadOnlyList<RodRun> runs) =>
        runs.Any(run => run.Ending == GuidanceEnding.InBand)
            ? SearchScore.Quantile(0.95, runs.Where(run => run.Ending == GuidanceEnding.InBand).Select(run => Math.Abs(run.Decibels))) : double.NaN;

    private static Table Titled(string title, params string[] columns)
    {
        var table = new Table().Title(title);
        foreach (var column in columns)
            table.AddColumn(column);
        return table;
    }

    private static string Text(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture);
}
