using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Stock;

public sealed class JobMatchTests : IDisposable
{
    private readonly TemporaryFolder _job = new();
    private readonly TemporaryFolder _shop = new();

    public void Dispose()
    {
        _job.Dispose();
        _shop.Dispose();
    }

    [Fact]
    public async Task A_match_reserves_its_parts_and_is_written_into_the_journal_and_the_picking_list()
    {
        using var record = Swept(9, 10);
        await TakeInAsync(("P1", Wanted(record, 9)), ("P2", Wanted(record, 10) + 200), ("P3", 1_000));

        var result = await Match(record).MatchAsync(new(), Some.Patient, default);
        ResultFiles.Write(record.Folder, PickingList.From(result));

        var job = StockJob.NameOf(record.State);
        Assert.Equal([9, 10], Ledger.Read().HeldBy(job, PartStatus.Reserved).Keys);
        Assert.Equal(PartStatus.Available, Ledger.Read().Parts["P3"].Status);
        Assert.Equal(["P1", "P2"], record.State.Matched!.Outputs.SelectMany(output => output.Parts).Order());
        Assert.Equal(3, File.ReadAllLines(_job.File("picking-list.csv")).Length);
        Assert.Equal(0, JsonDocument.Parse(File.ReadAllText(_job.File("picking-list.json"))).RootElement.GetProperty("outside")
            .GetProperty("value").GetInt32());
    }

    [Fact]
    public async Task Matching_again_without_a_change_writes_nothing_new_into_the_ledger_but_the_same_reservations()
    {
        using var record = Swept(9, 10);
        await TakeInAsync(("P1", Wanted(record, 9)), ("P2", Wanted(record, 10)));
        await Match(record).MatchAsync(new(), Some.Patient, default);

        var again = await Match(record).MatchAsync(new(), Some.Patient, default);

        Assert.Equal(0, again.Match.Moved.Value);
        Assert.Equal(2, Ledger.Read().Parts.Values.Count(part => part.Status == PartStatus.Reserved));
    }

    [Fact]
    public async Task A_part_that_no_longer_fits_the_match_goes_back_into_the_stock()
    {
        using var record = Swept(9);
        await TakeInAsync(("P1", Wanted(record, 9)), ("P2", Wanted(record, 9) + 100));
        await Match(record).MatchAsync(new(), Some.Patient, default);

        await Match(record).MatchAsync(new() { Excluded = new HashSet<string> { "P1" } }, Some.Patient, default);

        Assert.Equal((PartStatus.Available, PartStatus.Reserved), (Ledger.Read().Parts["P1"].Status, Ledger.Read().Parts["P2"].Status));
    }

    [Fact]
    public async Task A_fitted_output_takes_no_part_in_the_next_match()
    {
        using var record = Swept(9, 10);
        await TakeInAsync(("P1", Wanted(record, 9)), ("P2", Wanted(record, 10)));
        await Match(record).MatchAsync(new(), Some.Patient, default);
        var nine = Ledger.Read().HeldBy(StockJob.NameOf(record.State), PartStatus.Reserved)[9];
        (await Ledger.AppendAsync(new PartsFitted(StockJob.NameOf(record.State), 9, [.. nine.Select(part => part.Id)]), default)).OrFault();

        var result = await Match(record).MatchAsync(new(), Some.Patient, default);

        Assert.Equal([10], result.Match.Outputs.Select(output => output.Target.Output));
        Assert.Equal(PartStatus.Fitted, Ledger.Read().Parts[nine[0].Id].Status);
    }

    [Fact]
    public async Task Where_the_stock_does_not_suffice_the_output_is_named_and_what_to_buy()
    {
        using var record = Swept(9);
        await TakeInAsync(("P1", 1_000));

        var result = await Match(record).MatchAsync(new(), Some.Patient, default);

        Assert.Equal([9], PickingList.From(result).OutputsWithoutParts);
        Assert.NotEmpty(result.ToBuy!.Lines);
        Assert.Equal(PartStatus.Available, Ledger.Read().Parts["P1"].Status);
    }

    // 0.2 %/√3 of the peak for mains within ±0.1 % (GUM, 4.3.7), and the search's own 61.25 pF.
    [Fact]
    public async Task An_output_that_was_swept_without_a_counted_tone_is_matched_and_the_mains_count_in_its_uncertainty()
    {
        using var record = Some.Job(_job);
        record.Append(Some.Swept(9) with { ToneHertz = 0 });
        await TakeInAsync(("P1", 104_567), ("P2", 1_000));

        var matched = Assert.Single((await Match(record).MatchAsync(new(), Some.Patient, default)).Match.Outputs);

        Assert.Equal(104_567, matched.Target.Wanted.Picofarads);
        var mains = 0.002 / Math.Sqrt(3) * 104_567;
        Assert.Equal(Math.Sqrt((61.25 * 61.25) + (mains * mains)), matched.Target.SdPicofarads, 1e-6);
        Assert.Equal(10 * Math.Log10(1 + (((61.25 * 61.25) + (mains * mains)) / (7_666.95 * 7_666.95))), matched.LossDecibels!.Value, 1e-9);
        Assert.Equal("P1", Assert.Single(matched.Combination!.Parts).Id);
    }

    [Fact]
    public async Task A_job_without_a_swept_output_is_told_to_sweep_first()
    {
        using var record = Some.Job(_job);

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => Match(record).MatchAsync(new(), Some.Patient, default));

        Assert.Contains("sweep", fault.WhatToDo, StringComparison.Ordinal);
    }

    private StockLedger Ledger => new(_shop.File("stock.jsonl"), TimeProvider.System);

    private JobMatch Match(JobRecord record) => new(record, Ledger, TimeProvider.System);

    private static long Wanted(JobRecord record, int output) => MatchTargets.Of(record.State, 0).Single(target => target.Output == output)
        .Wanted.Picofarads;

    private JobRecord Swept(params int[] outputs)
    {
        var record = Some.Job(_job);
        foreach (var output in outputs)
            record.Append(Some.Swept(output) with { ToneHertz = record.Profile.ToneOf(record.Profile.Outputs.Single(one =>
                one.Number == output)).Hertz });
        return record;
    }

    private Task TakeInAsync(params (string Id, long Picofarads)[] parts) =>
        Ledger.AppendAsync(new PartsTakenIn([.. parts.Select(part => Some.Part(part.Id, part.Picofarads))]), default);
}
