using System.Globalization;
using System.Text.Json;
using AutoSweep.Core.Fitting;
using AutoSweep.Core.Tests.Support;
using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Tests.Fitting;

/// <summary>Weighted least squares against published worked examples.</summary>
public class WeightedLeastSquaresTests
{
    /// <summary>Source: NIST/ITL Statistical Reference Datasets, linear regression, certified to 15 digits (tests/Reference/nist_linear.json).
    /// Tolerances: the design's condition number times 2e-16; Filip and Wampler are made ill-conditioned on purpose.</summary>
    [Theory]
    [InlineData("Norris", 1e-12)]
    [InlineData("Pontius", 1e-11)]
    [InlineData("Wampler1", 1e-9)]
    [InlineData("Wampler4", 1e-7)]
    public void Coefficients_and_standard_deviations_agree_with_NISTs_certified_ones(string name, double tolerance)
    {
        var set = Reference("nist_linear.json").GetProperty("sets").EnumerateArray().Single(one => one.GetProperty("name").GetString() == name);
        var parameters = set.GetProperty("parameters").EnumerateArray().ToArray();
        var x = Numbers(set.GetProperty("x"));
        var fit = Fit(x, Numbers(set.GetProperty("y")), parameters.Length, 0);
        foreach (var (index, parameter) in parameters.Index())
        {
            AssertRelative(Number(parameter.GetProperty("certified")), fit.Coefficients[index], tolerance);
            if (Number(parameter.GetProperty("standard_deviation")) is > 0 and var deviation)
                AssertRelative(deviation, Math.Sqrt(fit.Covariance[index, index] * fit.Variance), tolerance);
        }

        if (Number(set.GetProperty("residual_standard_deviation")) is > 0 and var residual)
            AssertRelative(residual, Math.Sqrt(fit.Variance), tolerance);
    }

    /// <summary>Source: JCGM 100:2008, H.3, the calibration of a thermometer by a straight line (tests/Reference/gum_h3.json).</summary>
    [Fact]
    public void The_GUMs_thermometer_comes_out_as_printed_and_as_recomputed()
    {
        var example = Reference("gum_h3.json").GetProperty("H3");
        var recomputed = example.GetProperty("recomputed");
        var fit = Fit(Numbers(example.GetProperty("t_C")), Numbers(example.GetProperty("b_C")), 2, Number(example.GetProperty("t0")));
        double Expected(string name) => Number(recomputed.GetProperty(name));
        AssertRelative(Expected("y1"), fit.Coefficients[0], 1e-10);
        AssertRelative(Expected("y2"), fit.Coefficients[1], 1e-10);
        AssertRelative(Expected("s_y1"), Deviation(fit, 0), 1e-10);
        AssertRelative(Expected("s_y2"), Deviation(fit, 1), 1e-10);
        AssertRelative(Expected("s"), Math.Sqrt(fit.Variance), 1e-10);
        AssertRelative(Expected("r"), fit.Covariance[0, 1] / Math.Sqrt(fit.Covariance[0, 0] * fit.Covariance[1, 1]), 1e-10);
        Assert.Equal(9, fit.DegreesOfFreedom);
        var published = example.GetProperty("published");
        Assert.Equal(Number(published.GetProperty("y1")), fit.Coefficients[0], 4);
        Assert.Equal(Number(published.GetProperty("y2")), fit.Coefficients[1], 5);
        Assert.Equal(Number(published.GetProperty("s_y1")), Deviation(fit, 0), 4);
        Assert.Equal(Number(published.GetProperty("s_y2")), Deviation(fit, 1), 5);
    }

    [Fact]
    public void The_GUMs_correction_at_30_degrees_takes_the_covariance_into_account()
    {
        var example = Reference("gum_h3.json").GetProperty("H3");
        var fit = Fit(Numbers(example.GetProperty("t_C")), Numbers(example.GetProperty("b_C")), 2, Number(example.GetProperty("t0")));
        var at30 = Vector<double>.Build.Dense([1, 10]);
        var recomputed = example.GetProperty("recomputed");
        AssertRelative(Number(recomputed.GetProperty("b30")), at30.DotProduct(fit.Coefficients), 1e-10);
        AssertRelative(Number(recomputed.GetProperty("u_b30")), Math.Sqrt(at30.DotProduct(fit.Covariance * at30) * fit.Variance), 1e-10);
    }

    [Fact]
    public void A_doubled_weight_counts_as_the_observation_made_twice()
    {
        var thrice = Fit([1, 2, 3, 3], [1, 2.5, 2.7, 2.7], 2, 0);
        var weighted = WeightedLeastSquares.Solve(
            Design([1, 2, 3], 2, 0), Vector<double>.Build.Dense([1, 2.5, 2.7]), Vector<double>.Build.Dense([1, 1, Math.Sqrt(0.5)]));
        AssertRelative(thrice.Coefficients[0], weighted.Coefficients[0], 1e-12);
        AssertRelative(thrice.Coefficients[1], weighted.Coefficients[1], 1e-12);
    }

    [Fact]
    public void Leaving_an_observation_out_lowers_chi_squared_by_what_was_foretold()
    {
        double[] x = [1, 2, 3, 4, 5], y = [1, 2.5, 2.7, 9, 5];
        var all = Fit(x, y, 2, 0);
        var without = Fit([1, 2, 3, 5], [1, 2.5, 2.7, 5], 2, 0);
        AssertRelative(all.ChiSquared - without.ChiSquared, all.ChiSquaredWithout(3, 1), 1e-10);
    }

    [Fact]
    public void Observations_that_do_not_tell_every_coefficient_are_refused() =>
        Assert.Throws<ArgumentException>(() => Fit([2, 2, 2], [1, 2, 3], 2, 0));

    private static LinearFit Fit(double[] x, double[] y, int coefficients, double origin) => WeightedLeastSquares.Solve(
        Design(x, coefficients, origin), Vector<double>.Build.Dense(y), Vector<double>.Build.Dense(y.Length, 1));

    private static Matrix<double> Design(double[] x, int coefficients, double origin) =>
        Matrix<double>.Build.Dense(x.Length, coefficients, (row, power) => Math.Pow(x[row] - origin, power));

    private static double Deviation(LinearFit fit, int index) => Math.Sqrt(fit.Covariance[index, index] * fit.Variance);

    private static JsonElement Reference(string name) => JsonDocument.Parse(Repository.Text("tests/Reference/" + name)).RootElement;

    private static double[] Numbers(JsonElement list) => [.. list.EnumerateArray().Select(Number)];

    private static double Number(JsonElement text) => double.Parse(text.GetString()!, CultureInfo.InvariantCulture);

    private static void AssertRelative(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs((actual / expected) - 1) < tolerance, $"expected {expected}, got {actual}");
}
