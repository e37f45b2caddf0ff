using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Intake;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Intake;

public sealed class TakingInTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task Typed_parts_come_in_with_their_label_one_sound_each_and_an_answer_for_what_is_no_value()
    {
        await using var work = Work(null);
        List<BenchSound> sounds = [];
        work.Board.Sounded += sounds.Add;
        work.Start();

        await work.AnswerAsync("104.5n");
        await work.AnswerAsync("a hundred");
        await work.UntilAsync(() => work.Dialogue.Asked?.Text.Contains("a hundred", StringComparison.Ordinal) == true);
        await work.AnswerAsync("98n");
        await work.AnswerAsync("q");
        await work.EndAsync();

        var taken = work.Taken(work.Ledger.Read());
        Assert.Equal([104_500L, 98_000L], taken.Select(part => part.Measured.Picofarads));
        Assert.All(taken, part => Assert.Equal((100_000L, "J", "polyester", 63.0), (part.NominalPicofarads, part.ToleranceLetter, part.Dielectric, part.RatedVolts)));
        Assert.Equal([BenchSound.Done, BenchSound.Done], sounds);
        Assert.Equal((WorkProgress.Done, BenchActivity.Finished), (work.Progress, work.Board.Status.Activity));
    }

    [Fact]
    public async Task A_part_that_is_taken_back_meanwhile_counts_no_more_and_the_work_goes_on()
    {
        await using var work = Work(null);
        work.Start();
        await work.AnswerAsync("104.5n");
        await work.UntilAsync(() => work.Taken(work.Ledger.Read()).Count == 1);

        await StockFile.TakeBackAsync(work.Ledger);
        await work.AnswerAsync("98n");
        await work.UntilAsync(() => work.Taken(work.Ledger.Read()).Count == 1);

        Assert.Equal(98_000, work.Taken(work.Ledger.Read())[0].Measured.Picofarads);
        await work.StopAsync();
        Assert.Equal(WorkProgress.Stopped, work.Progress);
    }

    // JCGM 100:2008, 4.3.7: a limit of error counts as rectangular, limit / √3.
    [Fact]
    public async Task A_typed_value_carries_the_accuracy_of_the_meter_that_was_read()
    {
        await using var work = Work(null);
        work.Start();
        await work.AnswerAsync("100n");
        await work.UntilAsync(() => work.Taken(work.Ledger.Read()).Count == 1);

        Assert.Equal(0.01 * 100_000 / Math.Sqrt(3), work.Taken(work.Ledger.Read())[0].Measured.UncertaintyPicofarads, 6);
    }

    [Fact]
    public async Task A_capacitance_meter_that_is_not_there_is_told_nothing_goes_on_and_parts_of_before_are_not_counted()
    {
        await using var earlier = Work(null);
        earlier.Start();
        await earlier.AnswerAsync("104.5n");
        await earlier.AnswerAsync("q");
        await earlier.EndAsync();
        var before = earlier.Ledger.Read();
        await using var work = Work(new() { CapacitanceMeter = "TCPIP::127.0.0.1::1::SOCKET" });

        work.Start();
        await work.EndAsync();

        Assert.Equal(WorkProgress.Failed, work.Progress);
        Assert.IsType<Core.BenchFaultException>(work.Fault);
        Assert.Empty(work.Taken(before));
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void Values_are_typed_where_the_bench_has_no_meter_or_the_person_wants_it(bool wants, bool typed)
    {
        var wired = new BenchWiring { CapacitanceMeter = "TCPIP::127.0.0.1::1::SOCKET" };

        Assert.Equal(typed, Work(wired, new(wants, 0.5)).IsTyped);
        Assert.True(Work(null, new(wants, 0.5)).IsTyped);
    }

    [Fact]
    public async Task Odd_parts_stay_on_the_screen_while_the_same_output_asks_again()
    {
        var board = new BenchBoard();
        List<BenchSound> sounds = [];
        board.Sounded += sounds.Add;
        var parts = new BoardedParts(new FakeParts(), board);

        await parts.AskForAsync(9, ["A", "B"], default);
        Assert.Equal((BenchActivity.Waiting, 9), (board.Status.Activity, board.Status.Output));
        await parts.SignalAsync(isFine: false, default);
        await parts.AskForAsync(9, ["A", "B"], default);
        Assert.Equal(BenchActivity.NeedsYou, board.Status.Activity);
        await parts.AskForAsync(10, ["C"], default);
        Assert.Equal((BenchActivity.Waiting, "C"), (board.Status.Activity, Assert.Single(parts.Asked)));
        Assert.Equal([BenchSound.Question], sounds);
    }

    public void Dispose() => _folder.Dispose();

    private TakingIn Work(BenchWiring? wiring, PartOptions? options = null) => new(
        wiring, new IntakeLabel(100_000, "J", "polyester", 63), options ?? new(false, 1), new DeskOptions { Data = _folder.Path }, TimeProvider.System);
}
