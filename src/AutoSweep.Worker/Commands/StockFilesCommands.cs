using System.CommandLine;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock import</c> and <c>export</c>.</summary>
public static class StockFilesCommands
{
    /// <summary>Parts from a CSV file, all or none.</summary>
    public static Command Import()
    {
        var file = new Argument<string>("FILE")
        {
            Description = "CSV with commas and a header. Needed: measured_pf. "
                + $"Known: {string.Join(' ', StockCsv.Columns)}. Other columns are kept.",
        };
        var command = StockCommand.Build("import", "Takes in the parts of a CSV file: all of them, or none and every bad line named.",
            (parsed, ledger, cancellationToken) =>
            ImportAsync(parsed.GetValue(file)!, ledger, cancellationToken));
        command.Add(file);
        return command;
    }

    /// <summary>The stock as a CSV file.</summary>
    public static Command Export()
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "The file. Left out: standard output.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = StockCommand.Build("export", "Writes the stock as CSV.", async (parsed, ledger, cancellationToken) =>
        {
            var text = StockCsv.Text(ledger.Read());
            if (parsed.GetValue(file) is { } path)
                await CsvFile.WriteAsync(path, text, cancellationToken);
            else
                await Console.Out.WriteAsync(text.AsMemory(), cancellationToken);
        });
        command.Add(file);
        return command;
    }

    private static async Task ImportAsync(string path, StockLedger ledger, CancellationToken cancellationToken)
    {
        var import = new StockCsvReader(TimeProvider.System.GetUtcNow()).ReadAll(await CsvFile.ReadAsync(path, cancellationToken), path);
        await StockCommand.AppendAsync(ledger, stock => import.AsEvent(stock, Path.GetFileName(path)), _ =>
            $"{import.Parts.Count} parts taken in from {path}.", cancellationToken);
    }
}
