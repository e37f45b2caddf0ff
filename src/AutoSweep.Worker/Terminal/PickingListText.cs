using System.Globalization;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The picking list on the terminal.</summary>
internal static class PickingListText
{
    public static void Write(IAnsiConsole console, PickingList list, MatchOptions options, JobFolder folder)
    {
        var table = new Table().AddColumns("bin", "part", "measured", "output", "wanted", "all parts", "loss dB");
        foreach (var row in list.Rows)
        {
            table.AddRow(
                row.Bin.EscapeMarkup(), row.Part.EscapeMarkup(), new Capacitance(row.MeasuredPicofarads).ToString(), Text(row.Output, "0"),
                new Capacitance(row.WantedPicofarads).ToString(), new Capacitance(row.SumPicofarads).ToString(),
                    Text(row.LossDecibels, "0.0000"));
        }

        console.Write(table);
        console.WriteLine(
            $"Outputs outside {Text(options.LossLimitDecibels, "0.######")} dB: {Proof(list.Outside)}. "
            + $"Parts used: {Proof(list.PartsUsed)}. Parts moved since the last match: {Proof(list.Moved)}.");
        console.WriteLine(
            $"Total expected loss {Text(list.TotalLossDecibels, "0.00000")} dB; "
            + $"no match with these parts is below {Text(list.TotalLossBoundDecibels, "0.00000")} dB.");
        if (list.ToBuy is { } buy)
            Write(console, buy, list.OutputsWithoutParts);
        console.WriteLine($"Reserved in the ledger. Written: {folder.PickingList}.csv and .json");
    }

    private static void Write(IAnsiConsole console, BuyingList buy, IReadOnlyList<int> without)
    {
        console.WriteLine($"The stock does not suffice for outputs {string.Join(' ', without)}.");
        foreach (var line in buy.Lines)
        {
            console.WriteLine(
                $"  buy {line.Quantity} x {new Capacitance(line.NominalPicofarads)} {line.ToleranceLetter} ({line.Series}) "
                + $"for outputs {string.Join(' ', line.Outputs)}"
                + (line.Sure ? "" : "; measure them: one that fits is among so many in 95 of 100 cases"));
        }

        if (buy.Uncured.Count > 0)
            console.WriteLine(
                $"  no single value cures outputs {string.Join(' ', buy.Uncured)}: allow more parts (--most-parts), "
                + "a wider limit (--limit-db), or sweep them again if their peak is uncertain.");
    }

    private static string Proof(LevelProof proof) => proof.IsProven ? $"{proof.Value} (proven least)"
        : $"{proof.Value} (at least {proof.Bound})";

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
