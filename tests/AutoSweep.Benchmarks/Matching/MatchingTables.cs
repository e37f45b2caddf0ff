using System.Globalization;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Matching;

/// <summary>The tables for people.</summary>
internal static class MatchingTables
{
    internal static Table Matches(IReadOnlyList<MatchRun> runs)
    {
        var table = Titled("The whole generator matched, same stock", "outputs x parts", "way", "outside 0.05 dB", "parts",
            "total loss dB", "bound dB", "gap %", "seconds", "candidates", "rounds");
        foreach (var run in runs)
        {
            table.AddRow(
                run.Name, "match", Text(run.Ours.Outside.Value), Text(run.Ours.PartsUsed.Value), Text(run.Ours.TotalLossDecibels, "0.0000"),
                Text(run.Ours.TotalLossBoundDecibels, "0.0000"), Text(100 * run.Gap, "0.00"), Text(run.Seconds, "0.0"),
                    Text(run.Ours.Candidates), Text(run.Ours.Rounds));
            table.AddRow(run.Name, "best pair first", Text(run.Hands.Outside), Text(run.Hands.PartsUsed),
                Text(run.Hands.TotalLossDecibels, "0.0000"), "", "", "", "", "");
        }

        return table;
    }

    internal static Table Assignments(IReadOnlyList<AssignmentRun> runs)
    {
        var table = Titled("The packing solver on OR-Library's generalized assignment problems", "problem", "agents x jobs",
            "known optimum", "reached", "proven", "seconds");
        foreach (var run in runs)
        {
            table.AddRow(
                $"{run.Instance.File}-{run.Instance.Problem}", $"{run.Instance.Capacity.Length} x {run.Instance.Cost[0].Length}",
                Text(run.Instance.KnownOptimum), Text(run.Profit), run.Proven ? "yes" : "no", Text(run.Seconds, "0.00"));
        }

        return table;
    }

    private static Table Titled(string title, params string[] columns)
    {
        var table = new Table().Title(title);
        foreach (var column in columns)
            table.AddColumn(new TableColumn(column) { Alignment = column == columns[0] ? Justify.Left : Justify.Right });
        return table;
    }

    private static string Text(double value, string format = "0") => value.ToString(format, CultureInfo.InvariantCulture);
}
