using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep fit</c>: the matched parts, measured before they are soldered in.</summary>
public static class FitCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string>("--job") { Description = "The job's folder, matched.", HelpName = "DIR", Required = true };
        var limit = new Option<double>("--limit-db") { Description = "The expected loss up to which measured parts are accepted, in dB.", HelpName = "DB", DefaultValueFactory = _ => 0.05 };
        var byBins = new Option<bool>("--by-bins") { Description = "Walk bin by bin, so that each is opened once. Left out: output by output." };
        var undo = new Option<bool>("--undo") { Description = "Take the last fitting back instead: its parts are in the stock again." };
        var (stock, bench) = (new StockFlags(), new PartsFlags());
        FlagRange.Require(limit, 1e-6, 10);
        var command = new Command("fit", "Walks the picking list: shows the parts of each output, measures them on the capacitance meter before they are soldered in, and offers others where they do not measure up.")
        {
            job, limit, byBins, undo,
        };
        stock.AddTo(command);
        bench.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(async () =>
        {
            using var record = JobRecord.Resume(JobFolder.Open(parsed.GetValue(job)!), setAsideDamage: false, TimeProvider.System);
            var ledger = stock.Open(parsed);
            if (parsed.GetValue(undo))
                return await UndoAsync(record, ledger, cancellationToken);
            await using var open = await bench.OpenAsync(parsed, cancellationToken);
            AnsiConsole.MarkupLineInterpolated(System.Globalization.CultureInfo.InvariantCulture, $"[yellow]{Cautions.OldCapacitors}[/]");
            Console.Out.WriteLine(open.Instruction);
            var options = new FitOptions { LossLimitDecibels = parsed.GetValue(limit), ByBins = parsed.GetValue(byBins) };
            return await FitAsync(record, ledger, open.Parts, options, cancellationToken);
        }));
        return command;
    }

    /// <summary>Fits what is reserved for a job, and says what is left.</summary>
    /// <exception cref="BenchFaultException">Nothing is matched.</exception>
    public static async Task<JobOutcome> FitAsync(JobRecord record, StockLedger ledger, IPartSource parts, FitOptions options, CancellationToken cancellationToken)
    {
        var name = StockJob.NameOf(record.State);
        var targets = MatchTargets.Of(record.State, 0);
        var stock = ledger.Read();
        if (stock.HeldBy(name, PartStatus.Reserved).Count + stock.HeldBy(name, PartStatus.Fitted).Count == 0)
            throw new BenchFaultException(BenchFault.StockRefused, $"no parts are reserved for {record.Folder.Path} in {ledger.Path}", "a matched job", $"match first: autosweep match --job {record.Folder.Path}");
        var next = new NextBest(new MatchOptions { LossLimitDecibels = options.LossLimitDecibels }, TimeProvider.System);
        var open = await new PartFitting(parts, ledger, record, name, next, options, Console.Out).RunAsync(targets, cancellationToken);
        ResultFiles.Write(record);
        Console.Out.WriteLine($"{record.State.Fitted.Count} outputs fitted." + (open.Count > 0 ? $" Still open: {string.Join(", ", open)}." : ""));
        var outcome = new JobOutcome();
        if (open.Count == 0)
            outcome.Completed();
        return outcome;
    }

    private static async Task<JobOutcome> UndoAsync(JobRecord record, StockLedger ledger, CancellationToken cancellationToken)
    {
        var last = await FittingUndo.TakeBackAsync(record, ledger, cancellationToken);
        Console.Out.WriteLine($"Taken back: output {last.Output}. Its parts {string.Join(" + ", last.Parts)} are reserved for it again.");
        var outcome = new JobOutcome();
        outcome.Completed();
        return outcome;
    }
}
