using AutoSweep.Core;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Tests.Page.Work;

/// <summary>What lies on the bench after a restart.</summary>
public sealed class DeskTests : IAsyncDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly Desk _desk;

    public DeskTests() => _desk = new(new() { Data = _folder.Path }, NullLoggerFactory.Instance, TimeProvider.System);

    [Fact]
    public async Task The_last_job_is_on_the_bench_again()
    {
        await LeaveAsync("Curlew 1");

        await _desk.OpenLastAsync();

        Assert.Equal("Curlew 1", _desk.NameOfJob);
        Assert.Null(_desk.NotOpened);
    }

    [Fact]
    public async Task A_last_job_that_another_program_holds_is_told_and_another_one_can_be_begun()
    {
        await LeaveAsync("Curlew 2");
        using var held = JobFolder.Open(Path.Combine(_desk.Options.Jobs, "Curlew 2"));

        await _desk.OpenLastAsync();

        Assert.Null(_desk.Job);
        Assert.Equal(BenchFault.JobInUse, _desk.NotOpened!.Kind);
        await _desk.BeginAsync("Curlew 3", Some.Profile);
        Assert.Null(_desk.NotOpened);
    }

    [Fact]
    public async Task A_damaged_last_job_is_told()
    {
        await LeaveAsync("Curlew 4");
        var journal = Path.Combine(_desk.Options.Jobs, "Curlew 4", "journal.jsonl");
        var sound = await File.ReadAllTextAsync(journal);
        await File.WriteAllTextAsync(journal, "{\"sequence\":1}\n" + sound);

        await _desk.OpenLastAsync();

        Assert.Equal(BenchFault.JournalDamaged, _desk.NotOpened!.Kind);
    }

    [Fact]
    public async Task A_name_that_is_none_is_told_and_leads_nowhere()
    {
        Directory.CreateDirectory(_desk.Options.Jobs);
        await File.WriteAllTextAsync(_desk.Options.LastJob, "../elsewhere");

        await _desk.OpenLastAsync();

        Assert.Contains("../elsewhere", _desk.NotOpened!.Found, StringComparison.Ordinal);
    }

    public async ValueTask DisposeAsync()
    {
        await _desk.DisposeAsync();
        _folder.Dispose();
    }

    private async Task LeaveAsync(string name)
    {
        await using var before = new Desk(_desk.Options, NullLoggerFactory.Instance, TimeProvider.System);
        await before.BeginAsync(name, Some.Profile);
    }
}
