using System.CommandLine;
using System.Globalization;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock list</c>.</summary>
public static class StockListCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var all = new Option<bool>("--all") { Description = "Also parts that are fitted or scrapped." };
        var command = StockCommand.Build("list", "Lists the parts, bin by bin, with a sum at the end.", (parsed, ledger, _) =>
        {
            Write(PlainWidth.Console(), ledger.Read(), parsed.GetValue(all));
            return Task.CompletedTask;
        });
        command.Add(all);
        return command;
    }

    private static void Write(IAnsiConsole console, StockState state, bool all)
    {
        var bins = state.Bins();
        var table = new Table().AddColumns("bin", "part", "measured", "nominal", "dielectric", "rated", "state");
        var parts = state.Parts.Values.Where(part => all || part.Status is PartStatus.Available or PartStatus.Reserved)
            .OrderBy(part => part.Bin ?? bins.BinOf(part.Measured.Picofarads), StringComparer.Ordinal)
                .ThenBy(part => part.Measured.Picofarads);
        foreach (var part in parts)
        {
            table.AddRow(
                part.Bin ?? bins.BinOf(part.Measured.Picofarads), part.Id.EscapeMarkup(), part.Capacitance.ToString(),
                    Nominal(part).EscapeMarkup(),
                (part.Dielectric ?? "").EscapeMarkup(), part.RatedVolts is { } volts ? volts.ToString("0 V", CultureInfo.InvariantCulture)
                    : "", Status(part).EscapeMarkup());
        }

        console.Write(table);
        console.WriteLine(string.Join(", ", state.Parts.Values.GroupBy(part => part.Status).OrderBy(group => group.Key)
            .Select(group => $"{group.Count()} {StockCsv.Status(group.Key)}")));
    }

    private static string Nominal(Part part) => part.NominalPicofarads is { } nominal
        ? $"{new Core.Quantities.Capacitance(nominal)} {part.ToleranceLetter}".TrimEnd() : "";

    private static string Status(Part part) => part.Place is { } place
        ? $"{StockCsv.Status(part.Status)}, output {place.Output}: {place.Job}" : StockCsv.Status(part.Status);
}
