using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Fit;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Fit;

public sealed class FittingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _shop = new();
    private readonly JobRecord _job;
    private readonly StockLedger _ledger;

    public FittingTests()
    {
        _job = Some.Job(_folder);
        _ledger = new(DataFolder.LedgerAt(_shop.Path), TimeProvider.System);
        _job.Append(Some.Swept(9));
        _job.Append(Some.Swept(10) with { PeakPicofarads = 82_000 });
    }

    private PartsView View => new(_job.State, _ledger.Read());

    [Fact]
    public async Task A_match_reserves_proves_and_lists_what_to_fetch_bin_by_bin()
    {
        Assert.Null(View.Proof);
        await MatchAsync();

        Assert.Equal(["P1", "P2"], View.ToFetch.Select(row => row.Part.Id).Order());
        Assert.Equal([9, 10], View.NotFitted);
        Assert.Contains("(proven least)", View.Proof, StringComparison.Ordinal);
        Assert.Empty(View.Without);
        Assert.Null(PartsView.ToBuy(_job.Folder));
    }

    [Fact]
    public async Task What_the_stock_lacks_is_to_be_bought()
    {
        await TakeInAsync(("P1", Wanted(9)));
        await using var work = Match();
        work.Start();
        await work.EndAsync();

        Assert.Single(View.Without);
        Assert.NotNull(PartsView.ToBuy(_job.Folder));
    }

    [Fact]
    public async Task A_match_without_swept_outputs_tells_what_is_missing()
    {
        using var empty = new TemporaryFolder();
        using var job = Some.Job(empty);
        await using var work = new Matching(job, _ledger, new(), Some.Patient, TimeProvider.System);
        work.Start();
        await work.EndAsync();

        Assert.IsType<BenchFaultException>(work.Fault);
    }

    [Fact]
    public async Task Parts_are_asked_for_and_fitted_one_output_after_the_other_and_the_last_can_be_taken_back()
    {
        await MatchAsync();
        await using var work = Fit();
        List<BenchSound> sounds = [];
        work.Board.Sounded += sounds.Add;
        work.Start();
        await work.UntilAsync(() => work.Dialogue.Asked is not null);
        Assert.Equal((9, "P1"), (work.Board.Status.Output, Assert.Single(View.InHand(work.Asked)).Id));

        await work.AnswerAsync(Typed(9));
        await work.UntilAsync(() => work.Dialogue.Asked is not null && work.Board.Status.Output == 10);
        await work.AnswerAsync(Typed(10));
        await work.EndAsync();

        Assert.Equal(WorkProgress.Done, work.Progress);
        Assert.Empty(View.NotFitted);
        Assert.Equal([BenchSound.Done, BenchSound.Done], sounds);
        Assert.Equal(10, (await FittingUndo.TakeBackAsync(_job, _ledger, default)).Output);
        Assert.Equal([10], View.NotFitted);
        Assert.Equal(["P2"], View.ToFetch.Select(row => row.Part.Id));
    }

    [Fact]
    public async Task A_wrong_part_is_told_with_the_sound_that_asks_the_person_to_look()
    {
        await MatchAsync();
        await using var work = Fit();
        List<BenchSound> sounds = [];
        work.Board.Sounded += sounds.Add;
        work.Start();
        await work.AnswerAsync("47n");
        await work.UntilAsync(() => work.Dialogue.Asked is not null && sounds.Count > 0);

        Assert.Equal((BenchActivity.NeedsYou, BenchSound.Question), (work.Board.Status.Activity, Assert.Single(sounds)));
        Assert.Contains(work.Dialogue.Told, line => line.Contains("Is it the right part", StringComparison.Ordinal));
        await work.StopAsync();
        Assert.Equal([9, 10], View.NotFitted);
    }

    [Fact]
    public async Task Fitting_without_a_match_says_to_match_first()
    {
        await using var work = Fit();
        work.Start();
        await work.EndAsync();

        Assert.Contains("match first", Assert.IsType<BenchFaultException>(work.Fault).WhatToDo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0", "2", "", "Loss limit")]
    [InlineData("0.05", "4", "", "At most parts")]
    [InlineData("0.05", "2", "63 V", "Rated voltage")]
    public void Options_that_cannot_be_are_refused_by_their_field(string limit, string most, string volts, string field)
    {
        var fields = new MatchFields { Limit = limit, MostParts = most, Volts = volts };

        var fault = Assert.Throws<BenchFaultException>(() => (fields.Options(), fields.Wishes()));
        Assert.Contains(field, fault.Found, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        _job.Dispose();
        _folder.Dispose();
        _shop.Dispose();
    }

    private Matching Match() => new(_job, _ledger, new(), Some.Patient, TimeProvider.System);

    private Fitting Fit() => new(_job, new(), null, new(true, 0.1), new DeskOptions { Data = _shop.Path }, TimeProvider.System);

    private async Task MatchAsync()
    {
        await TakeInAsync(("P1", Wanted(9)), ("P2", Wanted(10) + 100));
        await using var work = Match();
        work.Start();
        await work.EndAsync();
        Assert.Null(work.Fault);
    }

    private long Wanted(int output) => MatchTargets.Of(_job.State, 0).Single(target => target.Output == output).Wanted.Picofarads;

    private string Typed(int output) => FormattableString.Invariant($"{_ledger.Read().HeldBy(StockJob.NameOf(_job.State), PartStatus.Reserved)[output].Sum(part => part.Measured.Picofarads)}p");

    private Task TakeInAsync(params (string Id, long Picofarads)[] parts) =>
        _ledger.AppendAsync(new PartsTakenIn([.. parts.Select(part => Some.Part(part.Id, part.Picofarads))]), default);
}
