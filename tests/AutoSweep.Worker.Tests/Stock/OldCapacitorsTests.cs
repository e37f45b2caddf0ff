using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Stock;

public sealed class OldCapacitorsTests : IDisposable
{
    // Its outputs 9 to 14 have filters.
    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task One_of_an_output_that_has_no_filter_is_kept_and_counts_for_no_filter()
    {
        var ledger = new StockLedger(_folder.File("stock.jsonl"), TimeProvider.System);
        foreach (var output in (int[])[1, 10, 12])
            (await ledger.AppendAsync(new OldCapacitorRemoved(StockJob.NameOf(_job.State), output, null, 100_000, null, 1958), default)).OrFault();

        var olds = OldCapacitors.Of(ledger.Read(), _job.State);

        Assert.Equal([1, 10, 12], olds.Keys.Order());
        Assert.Equal(2, OldCapacitors.OfFilters(olds, _job.State));
    }

    public void Dispose()
    {
        _job.Dispose();
        _folder.Dispose();
    }
}
