using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Stock;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>The stock as a CSV file, in and out.</summary>
public static class StockFile
{
    /// <summary>Where the stock is offered as a file.</summary>
    public const string Address = "/stock.csv";

    /// <summary>Takes in all parts of a file, or none.</summary>
    /// <param name="ledger">The stock.</param>
    /// <param name="text">The file's text.</param>
    /// <param name="name">The file's name, which the ledger keeps.</param>
    /// <param name="clock">The wall clock.</param>
    /// <returns>How many.</returns>
    /// <exception cref="BenchFaultException">A line cannot be understood, or the stock does not allow it.</exception>
    public static async Task<int> TakeInAsync(StockLedger ledger, string text, string name, TimeProvider clock)
    {
        var import = new StockCsvReader(clock.GetUtcNow()).ReadAll(text, name);
        (await ledger.AppendAsync(stock => import.AsEvent(stock, name), CancellationToken.None)).OrFault();
        return import.Parts.Count;
    }

    /// <summary>Takes the last entry back that was made by hand.</summary>
    /// <returns>The entry; none where there is nothing to take back.</returns>
    /// <exception cref="BenchFaultException">Later entries stand on it.</exception>
    public static async Task<StockEntry?> TakeBackAsync(StockLedger ledger)
    {
        StockEntry? last = null;
        var answer = await ledger.AppendAsync(
            stock => (last = StockView.LastToTakeBack(stock)) is { } entry ? new LedgerEntryWithdrawn(entry.Sequence) : null, CancellationToken.None);
        answer.OrFault();
        return last;
    }

    /// <summary>Offers the stock as a file.</summary>
    public static void Map(WebApplication app) => app.MapGet(Address, (Desk desk) =>
        Results.Text(StockCsv.Text(desk.Ledger.Read()), "text/csv; charset=utf-8"));
}
