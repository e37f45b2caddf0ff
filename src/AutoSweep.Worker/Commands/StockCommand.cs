using System.CommandLine;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock</c>: the shop's measured capacitors.</summary>
public static class StockCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => new("stock", "The shop's measured capacitors: one ledger for all benches.")
    {
        StockListCommand.Build(),
        StockAddCommand.Build(),
        StockIntakeCommand.Build(),
        StockFilesCommands.Import(),
        StockFilesCommands.Export(),
        StockChangeCommands.Scrap(),
        StockChangeCommands.Bins(),
        StockChangeCommands.Log(),
        StockChangeCommands.Undo(),
        StockChangeCommands.Repair(),
        StockOldCommand.Build(),
        StockOldSetCommand.Build(),
    };

    /// <summary>A command that works on the stock.</summary>
    /// <param name="name">What is typed.</param>
    /// <param name="help">What it does.</param>
    /// <param name="run">The work.</param>
    public static Command Build(string name, string help, Func<ParseResult, StockLedger, CancellationToken, Task> run)
    {
        var flags = new StockFlags();
        var command = new Command(name, help);
        flags.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(async () =>
        {
            await run(parsed, flags.Open(parsed), cancellationToken);
            var outcome = new JobOutcome();
            outcome.Completed();
            return outcome;
        }));
        return command;
    }

    /// <summary>Appends an event and tells what was written.</summary>
    /// <exception cref="Core.BenchFaultException">The stock does not allow it.</exception>
    public static async Task AppendAsync(StockLedger ledger, Func<StockState, StockEvent?> decide, Func<LedgerAnswer, string> told,
        CancellationToken cancellationToken)
    {
        var answer = (await ledger.AppendAsync(decide, cancellationToken)).OrFault();
        var back = answer.Entry is { Event: not LedgerEntryWithdrawn } entry
            ? $" Entry {entry.Sequence} of {ledger.Path}; autosweep stock undo {entry.Sequence} takes it back." : "";
        PlainWidth.Console().WriteLine(told(answer) + back);
    }
}
