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
    /// <summary>The largest file that is taken in, in bytes.</summary>
    public const long MostBytes = 1024 * 1024;

    /// <summary>Where the stock is offered as a file.</summary>
    public const string Address = "/stock.csv";

    private const int MostTroublesTold = 12;

    /// <summary>Takes in all parts of a file, or none.</summary>
    /// <param name="ledger">The stock.</param>
    /// <param name="text">The file's text.</param>
    /// <param name="name">The file's name, which the ledger keeps.</param>
    /// <param name="clock">The wall clock.</param>
    /// <returns>How many.</returns>
    /// <exception cref="BenchFaultException">A line cannot be understood, or the stock does not allow it.</exception>
    public static async Task<int> TakeInAsync(StockLedger ledger, string text, string name, TimeProvider clock)
    {
        var import = new StockCsvReader(clock.GetUtcNow()).Read(text);
        if (import.Troubles.Count > 0)
            throw Refuse(name, import.Troubles);
        if (import.Parts.Count == 0)
            throw Refuse(name, ["no part in it"]);
        (await ledger.AppendAsync(stock => import.AsEvent(stock, Path.GetFileName(name)), CancellationToken.None)).OrFault();
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

    private static BenchFaultException Refuse(string name, IReadOnlyList<string> troubles) => new(BenchFault.BadFile,
        $"{Path.GetFileName(name)}: {string.Join("; ", troubles.Take(MostTroublesTold))}"
            + (troubles.Count > MostTroublesTold ? FormattableString.Invariant($"; and {troubles.Count - MostTroublesTold} more") : ""),
        "a CSV file without a bad line", "Mend these lines and take the file in again; nothing was taken in.");
}
