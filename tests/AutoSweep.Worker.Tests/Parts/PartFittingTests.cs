using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Parts;

public sealed class PartFittingTests : IDisposable
{
    private const string JobName = "an invented job";

    private readonly TemporaryFolder _folder = new();
    private readonly JobRecord _job;
    private readonly StockLedger _ledger;
    private readonly StringWriter _said = new();

    private readonly MatchTarget[] _targets = [Target(9, 100_000), Target(10, 82_000)];

    public PartFittingTests()
    {
        _job = Some.Job(_folder);
        _ledger = new(_folder.File("stock.jsonl"), TimeProvider.System);
    }

    [Fact]
    public async Task Parts_that_measure_up_are_fitted_in_ledger_and_journal_with_one_beep()
    {
        await ReserveAsync();
        var parts = new FakeParts(100_100, 82_050);

        Assert.Empty(await FitAsync(parts));

        Assert.Equal(["A+B", "C"], parts.Asked);
        Assert.All(parts.Signals, Assert.True);
        Assert.Equal(100_100, _job.State.Fitted[9].MeasuredPicofarads);
        Assert.Equal(["A", "B"], _job.State.Fitted[9].Parts);
        Assert.Equal(PartStatus.Fitted, _ledger.Read().Parts["C"].Status);
    }

    // Loss at d = 0.01 half-widths and sd 30 pF of 8 nF: 10 log10(1 + 0.0125^2 + 0.00375^2) dB, the response of a resonance d half-widths off its peak.
    [Fact]
    public async Task The_journal_keeps_the_expected_loss()
    {
        await ReserveAsync();

        await FitAsync(new FakeParts(100_100, 82_000));

        Assert.Equal(10 * Math.Log10(1 + Math.Pow(100.0 / 8000, 2) + Math.Pow(30.0 / 8000, 2)), _job.State.Fitted[9].LossDecibels, 9);
    }

    [Fact]
    public async Task A_wrong_part_on_the_clips_is_asked_for_once_more()
    {
        await ReserveAsync();
        var parts = new FakeParts(47_000, 100_000, 82_000);

        Assert.Empty(await FitAsync(parts));

        Assert.Equal(["A+B", "A+B", "C"], parts.Asked);
        Assert.Equal([false, true, true], parts.Signals);
        Assert.Contains("Is it the right part", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parts_that_have_drifted_out_of_the_limit_make_way_for_the_next_best_and_are_free_again()
    {
        await ReserveAsync(Part("D", 82_200));
        var parts = new FakeParts(100_000, 80_600, 82_200);

        Assert.Empty(await FitAsync(parts));

        Assert.Equal(["A+B", "C", "D"], parts.Asked);
        Assert.Equal(["D"], _job.State.Fitted[10].Parts);
        Assert.Equal(PartStatus.Available, _ledger.Read().Parts["C"].Status);
    }

    [Fact]
    public async Task Without_other_parts_the_output_stays_open_and_the_walk_goes_on()
    {
        await ReserveAsync();

        Assert.Equal([9], await FitAsync(new FakeParts(98_500, 82_000)));
        Assert.Contains("no other free parts", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ending_early_leaves_the_rest_reserved()
    {
        await ReserveAsync();

        Assert.Equal([10], await FitAsync(new FakeParts(100_000)));
        Assert.Equal(PartStatus.Reserved, _ledger.Read().Parts["C"].Status);
    }

    // The ledger is written first; this is what a kill between the two leaves behind.
    [Fact]
    public async Task What_the_stock_has_fitted_and_the_job_does_not_know_is_written_down()
    {
        await ReserveAsync();
        var fitted = await _ledger.AppendAsync(new PartsFitted(JobName, 9, ["A", "B"]), default);
        var parts = new FakeParts(82_000);

        Assert.Empty(await FitAsync(parts));

        Assert.Equal(["C"], parts.Asked);
        Assert.Equal((100_000, fitted.Entry!.Sequence), (_job.State.Fitted[9].MeasuredPicofarads, _job.State.Fitted[9].LedgerSequence));
        Assert.Contains("output   9", _said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_bins_the_walk_opens_each_bin_once_in_ascending_order()
    {
        await ReserveAsync();
        var parts = new FakeParts(82_000, 100_000);

        await FitAsync(parts, new() { ByBins = true });

        Assert.Equal(["C", "A+B"], parts.Asked);
    }

    public void Dispose()
    {
        _job.Dispose();
        _folder.Dispose();
    }

    private Task<IReadOnlyList<int>> FitAsync(FakeParts parts, FitOptions? options = null) => new PartFitting(
        parts, _ledger, _job, JobName, new NextBest(Some.Patient, TimeProvider.System), options ?? new(), _said).RunAsync(_targets, default);

    private async Task ReserveAsync(params Part[] more)
    {
        await _ledger.AppendAsync(new PartsTakenIn([Part("A", 60_000, "B07"), Part("B", 40_000, "B03"), Part("C", 82_000, "B01"), .. more]), default);
        await _ledger.AppendAsync(new PartsReserved(JobName, [new("A", 9), new("B", 9), new("C", 10)]), default);
    }

    private static Part Part(string id, long picofarads, string? bin = null) => new() { Id = id, Bin = bin, Measured = new(picofarads, 30, default) };

    private static MatchTarget Target(int output, long picofarads) => new()
    {
        Output = output,
        Wanted = new(picofarads),
        HalfWidthPicofarads = 8_000,
        Law = ResponseLaw.Shunt,
    };
}
