using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Stock;

public sealed class StockLedgerTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Two_benches_that_reserve_the_same_part_get_it_once_and_the_other_is_told_who_has_it()
    {
        await Ledger().AppendAsync(Some.TakenIn("P1"), default);
        var benches = new[] { Ledger(), Ledger() };

        var answers = await Task.WhenAll(benches.Select((ledger, index) =>
            Task.Run(() => ledger.AppendAsync(new PartsReserved($"job {index}", [new("P1", 49)]), default))));

        Assert.Single(answers, answer => answer.Entry is not null);
        Assert.Contains("P1 is reserved for output 49 of job", Assert.Single(answers, answer => answer.Refusal is not null).Refusal!.Found,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_event_is_decided_in_view_of_what_another_bench_has_just_written()
    {
        var (one, other) = (Ledger(), Ledger());
        await one.AppendAsync(Some.TakenIn("P00001"), default);

        var answer = await other.AppendAsync(stock => Some.TakenIn(stock.FreshIds().First()), default);

        Assert.Equal(["P00001", "P00002"], answer.State.Parts.Keys);
        Assert.Equal(2, one.Read().Parts.Count);
    }

    [Fact]
    public async Task A_line_that_was_cut_off_by_a_kill_is_dropped_and_the_next_one_takes_its_place()
    {
        await Ledger().AppendAsync(Some.TakenIn("P1"), default);
        await File.AppendAllTextAsync(Path, "{\"sequence\":2,\"at\":\"20");

        Assert.Single(Ledger().Read().Parts);
        await Ledger().AppendAsync(Some.TakenIn("P2"), default);

        Assert.Equal(["P1", "P2"], Ledger().Read().Parts.Keys);
        Assert.Equal(2, File.ReadAllLines(Path).Length);
    }

    [Fact]
    public async Task A_bench_that_had_read_before_the_cut_goes_on_as_well()
    {
        var bench = Ledger();
        await bench.AppendAsync(Some.TakenIn("P1"), default);
        await File.AppendAllTextAsync(Path, "{\"sequence\":2,\"at\":\"20");

        Assert.Single(bench.Read().Parts);
        Assert.NotNull((await bench.AppendAsync(Some.TakenIn("P2"), default)).Entry);
    }

    [Fact]
    public async Task A_damaged_line_stops_everything_until_it_is_set_aside_and_no_byte_is_lost()
    {
        var bench = Ledger();
        foreach (var id in new[] { "P1", "P2", "P3" })
            await bench.AppendAsync(Some.TakenIn(id), default);
        var text = await File.ReadAllTextAsync(Path);
        await File.WriteAllTextAsync(Path, text.Replace("\"P2\"", "\"P9\"", StringComparison.Ordinal));

        var fault = Assert.Throws<BenchFaultException>(() => Ledger().Read());
        var aside = await Ledger().SetDamageAsideAsync(default);

        Assert.Equal(BenchFault.JournalDamaged, fault.Kind);
        Assert.Contains("line 2", fault.Found, StringComparison.Ordinal);
        Assert.Equal(1, aside);
        Assert.Equal(["P1", "P3"], Ledger().Read().Parts.Keys);
        Assert.Contains("\"P9\"", await File.ReadAllTextAsync(Directory.GetFiles(_folder.Path, "*.damaged-*").Single()),
            StringComparison.Ordinal);
        // A bench that was running all the while finds its way into the new file.
        Assert.Equal(["P1", "P3"], bench.Read().Parts.Keys);
    }

    [Fact]
    public async Task A_ledger_that_another_program_holds_for_too_long_is_a_fault_that_says_so()
    {
        await Ledger().AppendAsync(Some.TakenIn("P1"), default);
        await using var held = new FileStream(Path + ".lock", FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var impatient = new StockLedger(Path, TimeProvider.System, new() { Patience = TimeSpan.Zero });

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => impatient.AppendAsync(Some.TakenIn("P2"), default));

        Assert.Equal(BenchFault.StockInUse, fault.Kind);
    }

    [Fact]
    public async Task Waiting_for_the_lock_can_be_cancelled()
    {
        await using var held = new FileStream(Path + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        using var cancelled = new CancellationTokenSource();
        var waiting = Ledger().AppendAsync(Some.TakenIn("P1"), cancelled.Token);

        await cancelled.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
    }

    [Fact]
    public void A_ledger_that_is_not_there_yet_is_an_empty_stock() => Assert.Empty(Ledger().Read().Parts);

    private string Path => _folder.File("stock.jsonl");

    private StockLedger Ledger() => new(Path, TimeProvider.System);
}
