using System.Text.Json;
using AutoSweep.Core.Fitting;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Fitting;

/// <summary>Against numpy's least squares (tests/Reference/scipy/swing_fit.py), and what the fit promises.</summary>
public sealed class SwingFitTests
{
    private static readonly JsonElement Reference = JsonDocument.Parse(Repository.Text("tests/Reference/scipy/swing_fit.json")).RootElement;
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(0.021);

    public static TheoryData<int> Cases => [.. Enumerable.Range(0, Reference.GetProperty("cases").GetArrayLength())];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Mean_depth_and_uncertainty_are_numpys(int index)
    {
        var one = Reference.GetProperty("cases")[index];
        double[] samples = [.. one.GetProperty("samples").EnumerateArray().Select(value => value.GetDouble())];

        var fit = SwingFit.Of(samples, TimeSpan.FromSeconds(Reference.GetProperty("intervalSeconds").GetDouble()), one.GetProperty("hertz").GetDouble(), 0)!.Value;

        Assert.Equal(1, fit.Mean / one.GetProperty("mean").GetDouble(), 1e-9);
        Assert.Equal(1, fit.Depth / one.GetProperty("depth").GetDouble(), 1e-9);
        Assert.Equal(1, fit.DepthUncertainty / one.GetProperty("uncertainty").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_sampler_whose_clock_is_half_a_per_cent_off_costs_nothing()
    {
        var fit = SwingFit.Of(Samples(21.8182 * 1.005, 0.1), Interval, 21.8182, 0.01)!.Value;

        Assert.Equal(0.1, fit.Depth, 0.001);
        Assert.Equal(21.8182 * 1.005, fit.Hertz, 0.06);
    }

    [Fact]
    public void A_swing_at_another_rate_is_not_taken_for_the_wheels() =>
        Assert.InRange(SwingFit.Of(Samples(16.3, 0.1), Interval, 21.8182, 0.01)!.Value.Depth, 0, 0.01);

    [Fact]
    public void Too_few_samples_no_level_and_the_rate_of_half_the_sampling_say_nothing()
    {
        Assert.Null(SwingFit.Of(Samples(20, 0.1)[..7], Interval, 20, 0));
        Assert.Null(SwingFit.Of(new double[64], Interval, 20, 0));
        Assert.Null(SwingFit.Of(Samples(20, 0.1), Interval, 1 / 0.042, 0));
    }

    private static double[] Samples(double hertz, double depth) =>
        [.. Enumerable.Range(0, 64).Select(index => 0.1 * (1 + (depth * Math.Sin((2 * Math.PI * hertz * 0.021 * index) + 0.7))))];
}
