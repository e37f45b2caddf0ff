using System.CommandLine;
using System.Globalization;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep report</c>.</summary>
public static class ReportCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string>("--job") { Description = "The job's folder.", HelpName = "DIR", Required = true };
        var shop = new Option<string?>("--shop")
        {
            Description = $"The shop's name and address for the cover. Left out: {DefaultShop}, if it is there; otherwise lines to fill in by hand.",
            HelpName = "FILE",
        };
        var stock = new Option<string?>("--stock")
        {
            Description = "The stock from which the parts came: a folder, or a ledger in it (.jsonl). Left out: the one that the match used.",
            HelpName = "DIR",
        };
        var customer = new Option<string?>("--customer")
        {
            Description = "For whom the work was done. Left out: a line to fill in by hand.",
            HelpName = "NAME",
        };
        var instrument = new Option<string?>("--instrument")
        {
            Description = "The instrument that the generator belongs to, with its serial number. Left out: a line to fill in by hand.",
            HelpName = "TEXT",
        };
        var command = new Command(
            "report",
            "Writes the job's record: DIR/report.html for the shop, DIR/report-customer.html, and the same data as report.csv and report.json.")
        {
            job, shop, stock, customer, instrument,
        };
        command.SetAction((parsed, _) => StageCommand.RunAsync(async () =>
        {
            var reading = JobReading.Read(parsed.GetValue(job)!);
            await WriteAsync(new(reading, TimeProvider.System.GetLocalNow())
            {
                Shop = Shop(parsed.GetValue(shop)),
                Stock = LedgerOf(reading, parsed.GetValue(stock))?.Read(),
                Customer = parsed.GetValue(customer),
                Instrument = parsed.GetValue(instrument),
            });
            var outcome = new JobOutcome();
            outcome.Completed();
            return outcome;
        }));
        return command;
    }

    /// <summary>Writes a record and tells where it is.</summary>
    /// <exception cref="Core.BenchFaultException">The folder cannot be written.</exception>
    public static async Task WriteAsync(ReportSource source)
    {
        var files = await ReportFiles.WriteAsync(source);
        foreach (var (file, what) in new[] { (files.Shop, "the full record, for the shop"), (files.Customer, "the short one, for the customer"),
            (files.Csv, "one row an output"), (files.Json, "everything, as JSON") })
            AnsiConsole.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"  {file}  [grey]{what}[/]");
    }

    private static string DefaultShop => Path.Combine(DataFolder.Default, ShopSettings.FileName);

    private static ShopSettings? Shop(string? named) =>
        named is not null ? ShopSettings.Read(named) : File.Exists(DefaultShop) ? ShopSettings.Read(DefaultShop) : null;

    private static StockLedger? LedgerOf(JobReading job, string? named) => named is null
        ? JobLedger.Find(job, DataFolder.LedgerAt(null), TimeProvider.System) : new(DataFolder.LedgerAt(named), TimeProvider.System);
}
