using System.Numerics;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Matching;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Core.Tests.Matching;

public sealed class LevelLossTests
{
    // Worked by hand: 10 log10(1 + u²) at 0.05, 0.1, 0.5 and 1 half-width; the last is the half-power point by definition.
    [Theory]
    [InlineData(0.05, 0.01084)]
    [InlineData(0.1, 0.04321)]
    [InlineData(0.5, 0.96910)]
    [InlineData(1, 3.01030)]
    public void A_detuning_costs_what_the_parabola_says(double halfWidths, double decibels) =>
        Assert.Equal(decibels, new LevelLoss(Target(ResponseLaw.Shunt)).Decibels(100_000 + (8_000 * halfWidths)), 5);

    [Fact]
    public void The_worked_example_of_the_matching_page_holds()
    {
        var combination = Combination.Of([InventedShop.Part("P1", 47_100, 30), InventedShop.Part("P2", 52_700, 30)]);

        var loss = new LevelLoss(Target(ResponseLaw.Shunt) with { SdPicofarads = 240 }).Decibels(combination.Sum.Picofarads, combination.Variance);

        Assert.Equal(99_800, combination.Sum.Picofarads);
        Assert.Equal(0.0067, loss, 4);
    }

    // A series circuit computed with complex impedances, without the formula under test.
    [Theory]
    [InlineData(90_000)]
    [InlineData(97_000)]
    [InlineData(100_000)]
    [InlineData(104_000)]
    [InlineData(125_000)]
    public void The_series_law_agrees_with_a_computed_circuit(double picofarads)
    {
        const double Q = 12.5;
        var (omega, peak) = (2 * Math.PI * 740, 100_000e-12);
        var reactance = 1 / (omega * peak);
        double Current(double farads) => 1 / Complex.Abs(new Complex(reactance / Q, reactance - (1 / (omega * farads))));
        double HalfPower(double sign) => 1 / (omega * reactance * (1 + (sign / Q)));
        var target = Target(ResponseLaw.Series) with { HalfWidthPicofarads = (HalfPower(-1) - HalfPower(1)) / 2 * 1e12 };

        Assert.Equal(20 * Math.Log10(Current(peak) / Current(picofarads * 1e-12)), new LevelLoss(target).Decibels(picofarads), 9);
    }

    // The mean over 200,000 random draws, against the formula that takes the variances.
    [Fact]
    public void The_expected_loss_is_that_of_many_draws()
    {
        var random = new Random(1);
        var target = Target(ResponseLaw.Shunt) with { SdPicofarads = 400 };
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var drawn = Enumerable.Range(0, 200_000).Average(_ => 10 * Math.Log10(1
            + Math.Pow((300 + (400 * Normal()) + (100 * Normal())) / 8_000, 2)));

        var expected = new LevelLoss(target).Decibels(100_300, 100 * 100);

        Assert.InRange(expected, drawn, drawn * 1.01);
    }

    [Theory]
    [InlineData(ResponseLaw.Shunt)]
    [InlineData(ResponseLaw.Series)]
    public void At_the_ends_of_the_window_the_loss_is_the_limit(ResponseLaw law)
    {
        var loss = new LevelLoss(Target(law) with { SdPicofarads = 300 });

        var window = loss.Window(0.05)!.Value;

        Assert.Equal(0.05, loss.Decibels(window.Least), 9);
        Assert.Equal(0.05, loss.Decibels(window.Most), 9);
    }

    [Fact]
    public void A_target_known_too_badly_has_no_window() => Assert.Null(new LevelLoss(Target(ResponseLaw.Shunt) with { SdPicofarads = 900 })
        .Window(0.05));

    private static MatchTarget Target(ResponseLaw law) => new() { Output = 55, Wanted = new(100_000), HalfWidthPicofarads = 8_000,
        Law = law };
}
