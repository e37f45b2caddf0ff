using System.CommandLine;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary>The flag that says which stock.</summary>
public sealed class StockFlags
{
    private readonly Option<string?> _stock = new("--stock")
    {
        Description = $"The stock: a folder, or a ledger in it (.jsonl). Left out: {DataFolder.LedgerAt(null)}.",
        HelpName = "DIR",
    };

    /// <summary>Adds the flag to a command.</summary>
    public void AddTo(Command command) => command.Add(_stock);

    /// <summary>The ledger that is named.</summary>
    public StockLedger Open(ParseResult parsed) => new(DataFolder.LedgerAt(parsed.GetValue(_stock)), TimeProvider.System);
}
