using AutoSweep.Core.Curve;

namespace AutoSweep.Core.Tests.Curve;

public class RobustScaleTests
{
    private static readonly Random Source = new(21);

    [Theory]
    [InlineData(20)]
    [InlineData(40)]
    public void The_biweight_scale_of_normal_values_is_their_deviation_and_steadier_than_the_median_deviation(int count)
    {
        var samples = Enumerable.Range(0, 3000).Select(_ => Normal(count)).ToList();
        var (biweight, median) = (samples.ConvertAll(one => RobustScale.Biweight(one, 0)), samples.ConvertAll(one => RobustScale.Of(one, 0)));
        Assert.InRange(biweight.Average(), 0.97, 1.03);
        // Efficiencies 86 % and 37 % (Mosteller and Tukey 1977; Hampel 1974): variances as 0.43 to 1, here with room for chance.
        Assert.True(Variance(biweight) < 0.6 * Variance(median));
    }

    [Fact]
    public void A_tenth_of_wild_values_moves_it_by_a_fifth_at_most()
    {
        var sound = Normal(40);
        double[] wild = [.. sound.Take(36), 20, -20, 30, -40];
        Assert.InRange(RobustScale.Biweight(wild, 0) / RobustScale.Biweight(sound, 0), 0.8, 1.25);
    }

    [Fact]
    public void Values_that_are_all_alike_do_not_scatter() => Assert.Equal(0, RobustScale.Biweight([2, 2, 2], 2));

    // Box and Muller (1958).
    private static double[] Normal(int count) => [.. Enumerable.Range(0, count)
        .Select(_ => Math.Sqrt(-2 * Math.Log(1 - Source.NextDouble())) * Math.Cos(2 * Math.PI * Source.NextDouble()))];

    private static double Variance(List<double> values) => values.Average(value => value * value) - (values.Average() * values.Average());
}
