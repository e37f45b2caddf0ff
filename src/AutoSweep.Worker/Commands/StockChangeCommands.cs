using System.CommandLine;
using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>The small changes of the stock, and how they are taken back.</summary>
public static class StockChangeCommands
{
    /// <summary>A part that is thrown away.</summary>
    public static Command Scrap()
    {
        var id = new Argument<string>("ID") { Description = "The part's id." };
        var why = new Option<string>("--why")
        {
            Description = "The reason.",
            HelpName = "TEXT",
            DefaultValueFactory = _ => "no reason given",
        };
        var command = StockCommand.Build("scrap", "Writes a part off; it stays in the ledger.", (parsed, ledger, cancellationToken) =>
            StockCommand.AppendAsync(
            ledger, _ => new PartScrapped(parsed.GetValue(id)!, parsed.GetValue(why)!), _ => $"{parsed.GetValue(id)} is scrapped.",
                cancellationToken));
        command.Add(id);
        command.Add(why);
        return command;
    }

    /// <summary>The bins: shown, fixed, or given up.</summary>
    public static Command Bins()
    {
        var fix = new Option<string[]>("--cut-at")
        {
            Description = "Fix the bins with these cut points, such as 4.7n 100n 105n.",
            HelpName = "VALUE",
            AllowMultipleArgumentsPerToken = true,
        };
        var keep = new Option<bool>("--fix") { Description = "Fix the bins as they are proposed for the stock at hand." };
        var free = new Option<bool>("--free") { Description = "Give fixed bins up: they go by the stock at hand again." };
        fix.Validators.Add(result =>
        {
            if (result.Tokens.FirstOrDefault(token => TypedCapacitance.OfPart(token.Value) is null) is { } bad)
                result.AddError($"'{bad.Value}' is not a capacitance; expected {TypedCapacitance.Expected}.");
        });
        var command = StockCommand.Build("bins", "Shows the bins with their ranges; fixes them for the shop, or gives that up.",
            async (parsed, ledger, cancellationToken) =>
        {
            var typed = parsed.GetValue(fix) ?? [];
            if (typed.Length > 0)
                (await ledger.AppendAsync(new BinsFixed([.. typed.Select(text => TypedCapacitance.OfPart(text)!.Value.Picofarads).Order()]),
                    cancellationToken)).OrFault();
            else if (parsed.GetValue(keep))
                (await ledger.AppendAsync(stock => new BinsFixed(stock.Bins().CutsPicofarads), cancellationToken)).OrFault();
            else if (parsed.GetValue(free))
                (await ledger.AppendAsync(new BinsFixed(null), cancellationToken)).OrFault();
            Show(PlainWidth.Console(), ledger.Read());
        });
        foreach (var option in new Option[] { fix, keep, free })
            command.Add(option);
        return command;
    }

    /// <summary>The latest entries of the ledger.</summary>
    public static Command Log()
    {
        var count = new Option<int>("--last") { Description = "How many entries.", HelpName = "N", DefaultValueFactory = _ => 20 };
        var command = StockCommand.Build("log", "Lists the latest entries of the ledger, with their numbers.", (parsed, ledger, _) =>
        {
            var (console, state) = (PlainWidth.Console(), ledger.Read());
            foreach (var entry in state.Entries.TakeLast(parsed.GetValue(count)))
            {
                var idle = state.Idle.Contains(entry.Sequence) ? "  (does not count)" : "";
                console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{entry.Sequence,6}  {entry.At.ToLocalTime():yyyy-MM-dd HH:mm}  {StockEventText.Of(entry.Event)}{idle}"));
            }
            return Task.CompletedTask;
        });
        command.Add(count);
        return command;
    }

    /// <summary>An entry taken back.</summary>
    public static Command Undo()
    {
        var number = new Argument<long?>("NUMBER")
        {
            Description = "The entry's number. Left out: the last one that counts.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = StockCommand.Build("undo", "Takes an entry of the ledger back. Both stay in the ledger.",
            (parsed, ledger, cancellationToken) => StockCommand.AppendAsync(
            ledger,
            stock => new LedgerEntryWithdrawn(parsed.GetValue(number) ?? LastThatCounts(stock)),
            answer => $"Entry {((LedgerEntryWithdrawn)answer.Entry!.Event).Sequence} is taken back.",
            cancellationToken));
        command.Add(number);
        return command;
    }

    /// <summary>Damaged lines set aside.</summary>
    public static Command Repair() => StockCommand.Build(
        "repair", "Sets damaged lines of the ledger aside; the file is kept as it is under another name.",
            async (_, ledger, cancellationToken) =>
            AnsiConsole.WriteLine($"{await ledger.SetDamageAsideAsync(cancellationToken)} lines of {ledger.Path} set aside."));

    private static long LastThatCounts(StockState stock) => stock.Entries
        .LastOrDefault(entry => !stock.Idle.Contains(entry.Sequence)
            && entry.Event is not (LedgerEntryWithdrawn or LedgerLinesSetAside))?.Sequence ?? 0;

    private static void Show(IAnsiConsole console, StockState state)
    {
        var bins = state.Bins();
        var counts = state.Parts.Values.Where(part => part.Status is PartStatus.Available or PartStatus.Reserved)
            .GroupBy(part => part.Bin ?? bins.BinOf(part.Measured.Picofarads)).ToDictionary(group => group.Key, group => group.Count());
        var table = new Table().AddColumns("bin", "range", "parts");
        foreach (var (bin, range) in bins.Labels())
            table.AddRow(bin, range, counts.GetValueOrDefault(bin).ToString(CultureInfo.InvariantCulture));
        console.Write(table);
        console.WriteLine(state.FixedBins is null ? "Proposed for the stock at hand; --fix keeps them." : "Fixed by the shop.");
    }
}
