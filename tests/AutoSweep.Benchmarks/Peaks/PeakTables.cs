using System.Globalization;
using AutoSweep.Sources;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Peaks;

/// <summary>The tables for people.</summary>
internal static class PeakTables
{
    internal static Table Rivals(SearchScore score)
    {
        var table = Titled("Decibels lost at the answer, same sources, same noise", "method", "50 %", "99 %", "readings (median)");
        Row(table, "flank search", score.Outcomes.Select(outcome => outcome.LossDecibels), score.MedianReadings);
        foreach (var method in RivalMethod.All)
        {
            var results = score.Outcomes.AsParallel().Select(outcome => method.Score(outcome.Source)).ToArray();
            Row(table, method.Name, results.Select(result => result.LossDecibels), SearchScore.Quantile(0.5, results.Select(result => (double)result.Readings)));
        }
        return table;
    }

    internal static Table Families(SearchScore score)
    {
        var table = Titled("The flank search by family", "family", "50 %", "99 %", "readings (median)", "outside 99 % interval", "bound reached");
        foreach (var family in score.Outcomes.GroupBy(outcome => outcome.Source.Family).OrderBy(family => family.Key))
            Row(table, family.Key.ToString().ToLowerInvariant(), new SearchScore([.. family]));
        Row(table, "all", score);
        return table;
    }

    internal static Table Conditions(params (string Name, SearchScore Score)[] conditions)
    {
        var table = Titled("The flank search by what it is told", "told", "50 %", "99 %", "readings (median)", "outside 99 % interval", "bound reached");
        foreach (var (name, score) in conditions)
            Row(table, name, score);
        return table;
    }

    private static Table Titled(string title, params string[] columns)
    {
        var table = new Table().Title(title);
        foreach (var column in columns)
            table.AddColumn(new TableColumn(column) { Alignment = column == columns[0] ? Justify.Left : Justify.Right });
        return table;
    }

    private static void Row(Table table, string name, IEnumerable<double> losses, double readings)
    {
        double[] all = [.. losses];
        table.AddRow(name, Decibels(SearchScore.Quantile(0.5, all)), Decibels(SearchScore.Quantile(0.99, all)), Number(readings, "0"));
    }

    private static void Row(Table table, string name, SearchScore score)
    {
        double[] losses = [.. score.Outcomes.Select(outcome => outcome.LossDecibels)];
        table.AddRow(
            name,
            Decibels(SearchScore.Quantile(0.5, losses)),
            Decibels(SearchScore.Quantile(0.99, losses)),
            Number(score.MedianReadings, "0"),
            Number(100 * score.ShareOutside, "0.00") + " %",
            Number(100 * (1 - score.ShareFailed), "0.00") + " %");
    }

    private static string Decibels(double value) => Number(value, value < 0.1 ? "0.0000" : "0.00");

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
