using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock import</c> and <c>export</c>.</summary>
public static class StockFilesCommands
{
    // More lines than this are not read, but counted.
    private const int MostTroublesTold = 20;

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
                await Guarded(path, () => File.WriteAllTextAsync(path, text, cancellationToken));
            else
                await Console.Out.WriteAsync(text.AsMemory(), cancellationToken);
        });
        command.Add(file);
        return command;
    }

    private static async Task ImportAsync(string path, StockLedger ledger, CancellationToken cancellationToken)
    {
        var text = "";
        await Guarded(path, async () => text = await File.ReadAllTextAsync(path, cancellationToken));
        var import = new StockCsvReader(TimeProvider.System.GetUtcNow()).Read(text);
        if (import.Troubles.Count > 0)
            throw Refuse(path, import.Troubles);
        await StockCommand.AppendAsync(ledger, stock => import.AsEvent(stock, Path.GetFileName(path)), _ =>
            $"{import.Parts.Count} parts taken in from {path}.", cancellationToken);
    }

    private static BenchFaultException Refuse(string path, IReadOnlyList<string> troubles) => new(
        BenchFault.BadFile,
        $"{path}: {string.Join("; ", troubles.Take(MostTroublesTold))}"
            + (troubles.Count > MostTroublesTold ? $"; and {troubles.Count - MostTroublesTold} more" : ""),
        "a file without a bad line", "mend these lines and import again; nothing was taken in");

    private static async Task Guarded(string path, Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{path}: {fault.Message}", "a CSV file that can be read or written",
                "check the name, the folder and the permissions", fault);
        }
    }
}
