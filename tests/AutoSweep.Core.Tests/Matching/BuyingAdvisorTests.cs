using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Core.Tests.Matching;

public sealed class BuyingAdvisorTests
{
    [Fact]
    public void One_value_that_cures_all_is_advised_before_one_for_each()
    {
        // 68 nF in stock beside a bought 33 nF makes 101 nF for both; a wide filter takes any piece of 33 nF within 1 or 5 %.
        MatchTarget[] outside = [Target(1, 101_000, 30_000), Target(2, 101_300, 30_000)];
        Part[] left = [InventedShop.Part("P1", 68_000), InventedShop.Part("P2", 68_200)];

        var list = new BuyingAdvisor(new()).Advise(outside, left);

        var line = Assert.Single(list.Lines);
        Assert.Equal([1, 2], line.Outputs);
        Assert.Equal(2, line.Quantity);
        Assert.True(line.Sure);
        Assert.Empty(list.Uncured);
    }

    [Fact]
    public void Where_only_some_pieces_fit_the_list_says_how_many_to_buy()
    {
        var list = new BuyingAdvisor(new() { MostParts = 1 }).Advise([Target(1, 100_000, 8_000)], []);

        var line = Assert.Single(list.Lines);
        Assert.False(line.Sure);
        // Window of 100 nF ± 0.107 half-widths, less the meter's share: 0.853 nF. E96 at 1 % spreads over ± 1 nF: 85 % fit, so 2 pieces.
        Assert.Equal(("E96", 100_000, "F", 2), (line.Series, line.NominalPicofarads, line.ToleranceLetter, line.Quantity));
    }

    [Fact]
    public void An_output_known_too_badly_for_the_limit_is_named_as_uncured() =>
        Assert.Equal([1], new BuyingAdvisor(new()).Advise([Target(1, 100_000, 8_000) with { SdPicofarads = 2_000 }], []).Uncured);

    // Any piece of a sure line, wherever it lies in its tolerance, keeps its output within the limit.
    [Fact]
    public void What_is_called_sure_is_sure_at_both_ends_of_the_tolerance()
    {
        var target = Target(1, 101_000, 30_000);
        Part[] left = [InventedShop.Part("P1", 68_000)];
        var line = new BuyingAdvisor(new()).Advise([target], left).Lines.Single(one => one.Sure);
        var (low, high) = ToleranceLetters.Percent[line.ToleranceLetter];

        Assert.All([low, high], percent => Assert.Contains(
            new[] { 0L, 68_000 }, beside => new LevelLoss(target).Decibels((line.NominalPicofarads * (1 + (percent / 100))) + beside,
                0) <= 0.05));
    }

    private static MatchTarget Target(int output, long picofarads, double halfWidth) =>
        new() { Output = output, Wanted = new(picofarads), HalfWidthPicofarads = halfWidth };
}
