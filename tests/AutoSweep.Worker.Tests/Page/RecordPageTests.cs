using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.Diagnosis;
using AutoSweep.Worker.Page.Record;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class RecordPageTests : IDisposable
{
    private readonly TemporaryFolder _data = new();
    private readonly RecappedJob _job = new();

    private DeskOptions Options => new() { Data = _data.Path };

    public void Dispose()
    {
        _data.Dispose();
        _job.Dispose();
    }

    [Fact]
    public void It_says_what_the_written_record_says()
    {
        var source = _job.Source;
        var (view, report) = (RecordView.Of(source.Job, source.Stock!), JobReport.Of(source));

        Assert.Equal(report.NotDone, view.NotDone);
        Assert.Equal(report.Findings.Order(ByPlace), view.Findings.SelectMany(fault => fault).Order(ByPlace));
    }

    [Fact]
    public async Task The_record_is_written_with_shop_customer_and_instrument_and_remembers_them()
    {
        new ShopForm { Name = "Some Bench" }.Save(Options.Shop);

        await new RecordWriting { Customer = " C ", Instrument = "I, no. 1" }.WriteAsync(_job.Folder, Options, TimeProvider.System);

        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(_job.Folder, "report.json")));
        Assert.Equal("Some Bench", json.RootElement.GetProperty("shop").GetProperty("name").GetString());
        var again = RecordWriting.Before(_job.Folder);
        Assert.Equal(("C", "I, no. 1"), (again.Customer, again.Instrument));
        Assert.Equal(
            ["report-customer.html", "report.csv", "report.html", "report.json"],
            RecordFile.In(_job.Folder).Where(file => file.Written is not null).Select(file => file.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_shop_file_that_cannot_be_used_stops_the_record_before_anything_is_written()
    {
        File.WriteAllText(Options.Shop, "{}");

        await Assert.ThrowsAsync<BenchFaultException>(() => new RecordWriting().WriteAsync(_job.Folder, Options, TimeProvider.System));

        Assert.False(File.Exists(Path.Combine(_job.Folder, "report.html")));
        Assert.Equal("", RecordWriting.Before(_job.Folder).Customer);
    }

    [Fact]
    public void The_ledger_in_the_jobs_own_folder_goes_before_the_shops()
    {
        Assert.Null(JobLedger.Find(_job.Reading, Options.Ledger, TimeProvider.System));
        File.WriteAllText(Options.Ledger, "");
        Assert.Equal(Options.Ledger, JobLedger.Find(_job.Reading, Options.Ledger, TimeProvider.System)!.Path);

        var own = Path.Combine(_job.Folder, DataFolder.LedgerName);
        File.WriteAllText(own, "");
        Assert.Equal(own, JobLedger.Find(_job.Reading, Options.Ledger, TimeProvider.System)!.Path);
    }

    [Fact]
    public void Every_file_is_linked_by_its_bare_name()
    {
        Assert.All(RecordFile.In(_job.Folder), file =>
        {
            Assert.Equal("files/" + file.Name, file.Address);
            Assert.Equal(file.Name, Path.GetFileName(file.Name));
        });
    }

    private static Comparer<Finding> ByPlace { get; } =
        Comparer<Finding>.Create((one, other) => (one.Fault, one.Output).CompareTo((other.Fault, other.Output)));
}
