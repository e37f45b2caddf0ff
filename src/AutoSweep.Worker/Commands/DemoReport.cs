using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>The demo's end: the record that the customer of an invented shop would get.</summary>
public static class DemoReport
{
    // Nobody's shop; it says so on the record's cover.
    private static readonly ShopSettings Shop = new()
    {
        Name = "Tonrad Workshop",
        Invented = true,
        Address = ["An address that does not exist", "Nowhere"],
        Technician = "A technician who does not exist",
        Note = "This shop, its customer and this generator are invented: the record shows what a real one looks like.",
    };

    /// <summary>Writes the record of a finished demo.</summary>
    /// <param name="folder">The job's folder, its own stock in it.</param>
    /// <exception cref="Core.BenchFaultException">The folder cannot be written.</exception>
    public static async Task WriteAsync(string folder)
    {
        var job = JobReading.Read(folder);
        AnsiConsole.WriteLine();
        AnsiConsole.WriteLine("The record:");
        await ReportCommand.WriteAsync(new(job, TimeProvider.System.GetLocalNow())
        {
            Shop = Shop,
            Stock = new StockLedger(Path.Combine(job.Folder, DataFolder.LedgerName), TimeProvider.System).Read(),
            Customer = "A customer who does not exist (invented)",
            Instrument = "Bench demonstration, no serial number (invented)",
        });
    }
}
