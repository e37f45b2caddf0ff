using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Tests.Magnets;

public sealed class SlopeBeliefTests
{
    // NIST StRD, linear regression through the origin: NoInt1 (x = 60 to 70, y = 130 to 140) and NoInt2 (x = 4, 5, 6; y = 3, 4, 4), with the certified
    // coefficient, its standard deviation and the residual standard deviation.
    public static TheoryData<double[], double[], double, double, double> Certified => new()
    {
        {
            [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70], [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140],
            2.07438016528926, 0.0165289256198347, 3.56753034006338
        },
        { [4, 5, 6], [3, 4, 4], 0.727272727272727, 0.0420827318078432, 0.369274472937998 },
    };

    [Theory]
    [MemberData(nameof(Certified))]
    public void With_a_flat_prior_and_even_errors_it_is_least_squares_through_the_origin(double[] x, double[] y, double slope, double sd, double residualSd)
    {
        var belief = x.Zip(y).Aggregate(SlopeBelief.Prior(1, 1000), (known, pair) => known.With(-pair.First, 0, pair.Second, residualSd));

        Assert.Equal(slope, belief.Median, 0.07 * sd);
        Assert.Equal(slope + (1.959964 * sd), belief.Quantile(0.975), 0.2 * sd);
        Assert.Equal(slope - (1.959964 * sd), belief.Quantile(0.025), 0.2 * sd);
    }

    // Quantiles of the normal distribution (tables): 0.8413 at one standard deviation, 0.95 at 1.6449.
    [Fact]
    public void Before_any_move_the_logarithm_is_normal()
    {
        var belief = SlopeBelief.Prior(20, Math.Log(2));

        Assert.Equal(20, belief.Median, 0.02);
        Assert.Equal(40, belief.Quantile(0.841345), 0.05);
        Assert.Equal(20 / Math.Pow(2, 1.644854), belief.Quantile(0.05), 0.02);
    }

    [Fact]
    public void The_hands_error_bounds_what_one_move_tells()
    {
        var belief = SlopeBelief.Prior(20, Math.Log(2)).With(0.1, 0.02, -4, 0.01);

        Assert.Equal(40, belief.Median, 3.0);
        Assert.InRange(belief.Quantile(0.975) / belief.Quantile(0.025), 1.8, 2.6);
    }
}
