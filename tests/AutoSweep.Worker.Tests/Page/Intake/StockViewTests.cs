using AutoSweep.Core;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Page.Intake;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Intake;

public sealed class StockViewTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly StockLedger _ledger;

    public StockViewTests() => _ledger = new(_folder.File("stock.jsonl"), TimeProvider.System);

    [Theory]
    [InlineData("104.5n", false, "C B")]
    [InlineData("104500p", false, "C B")]
    [InlineData("", false, "A B C")]
    [InlineData("", true, "D A B C")]
    [InlineData("poly", false, "B")]
    [InlineData("scrap", true, "D")]
    [InlineData("b09", false, "A")]
    [InlineData("c", false, "C")]
    [InlineData("1u", false, "")]
    public async Task A_search_finds_by_value_nearest_first_or_by_word(string search, bool all, string found)
    {
        await TakeInAsync(Some.Part("A", 10_000) with { Bin = "B09" }, Some.Part("B", 101_000) with { Dielectric = "polyester", Bin = "X1" },
            Some.Part("C", 104_000) with { Bin = "X2" }, Some.Part("D", 5_000));
        await _ledger.AppendAsync(new PartScrapped("D", "a broken lead"), default);

        Assert.Equal(found, string.Join(' ', StockView.Find(_ledger.Read(), search, all).Select(part => part.Id)));
    }

    [Fact]
    public async Task Totals_and_bins_count_what_lies_in_them()
    {
        Assert.Equal("No parts yet.", StockView.Totals(_ledger.Read()));
        await TakeInAsync(Some.Part("A"), Some.Part("B"), Some.Part("C") with { Bin = "drawer" });
        await _ledger.AppendAsync(new PartsReserved("job", [new("B", 9)]), default);

        Assert.Equal("2 free, 1 reserved", StockView.Totals(_ledger.Read()));
        Assert.Equal("reserved, output 9", StockView.State(_ledger.Read().Parts["B"]));
        Assert.Equal([("B01", "all values", 2), ("drawer", "by hand", 1)], StockView.Bins(_ledger.Read()));
    }

    [Fact]
    public async Task Taking_back_goes_back_step_by_step_and_leaves_the_jobs_own_entries_alone()
    {
        await TakeInAsync(Some.Part("A"));
        await TakeInAsync(Some.Part("B"));
        await TakeInAsync(Some.Part("C"));
        await _ledger.AppendAsync(new PartsReserved("job", [new("A", 9)]), default);

        Assert.Equal(3, (await StockFile.TakeBackAsync(_ledger))!.Sequence);
        Assert.Equal(2, (await StockFile.TakeBackAsync(_ledger))!.Sequence);
        await Assert.ThrowsAsync<BenchFaultException>(() => StockFile.TakeBackAsync(_ledger));
        Assert.Equal(["A"], _ledger.Read().Parts.Keys);
        Assert.Equal(PartStatus.Reserved, _ledger.Read().Parts["A"].Status);
    }

    [Fact]
    public async Task An_empty_stock_has_nothing_to_take_back() => Assert.Null(await StockFile.TakeBackAsync(_ledger));

    [Theory]
    [InlineData("measured_pf\n104500\n98000\n", 2)]
    [InlineData("measured_pf\n104500\nxx\n", 0)]
    [InlineData("value\n104500\n", 0)]
    [InlineData("measured_pf\n", 0)]
    [InlineData("", 0)]
    public async Task A_file_comes_in_whole_or_not_at_all(string text, int parts)
    {
        var taken = StockFile.TakeInAsync(_ledger, text, "bag.csv", TimeProvider.System);

        if (parts > 0)
            Assert.Equal(parts, await taken);
        else
            Assert.Contains("bag.csv", (await Assert.ThrowsAsync<BenchFaultException>(() => taken)).Found, StringComparison.Ordinal);
        Assert.Equal(parts, _ledger.Read().Parts.Count);
    }

    [Theory]
    [InlineData("49", "98.2n", "105n", "98.20 nF", "-6.5 %")]
    [InlineData("49", "", "105n", "no capacitor any more", "")]
    [InlineData("49", "110n", "", "110.00 nF", "")]
    public void An_old_capacitor_is_understood_as_it_is_typed(string output, string measured, string nominal, string value, string drift)
    {
        var old = new OldFields { Output = output, Measured = measured, Nominal = nominal, Year = "1958" }.Read("job", [48, 49], default);

        Assert.Equal((49, value, drift, 1958), (old.Output, OldFields.Value(old), OldFields.Drift(old), old.MadeIn));
    }

    [Theory]
    [InlineData("50", "", "", "Output")]
    [InlineData("", "", "", "Output")]
    [InlineData("49", "98.2", "", "Measured")]
    [InlineData("49", "98.2n", "58", "Year")]
    public void An_old_capacitor_that_cannot_be_is_refused_by_its_field(string output, string measured, string year, string field) => Assert.Contains(
        $"{field}: ", Assert.Throws<BenchFaultException>(
            () => new OldFields { Output = output, Measured = measured, Year = year }.Read("job", [48, 49], default)).Found, StringComparison.Ordinal);

    public void Dispose() => _folder.Dispose();

    private Task TakeInAsync(params Part[] parts) => _ledger.AppendAsync(new PartsTakenIn(parts), default);
}
