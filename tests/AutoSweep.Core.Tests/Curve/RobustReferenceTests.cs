using System.Text.Json;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Tests.Curve.Support;

namespace AutoSweep.Core.Tests.Curve;

/// <summary>The level curve's robust statistics against statsmodels 0.13.5 and SciPy 1.10.1 (tests/Reference/robust, with the script that made it).</summary>
public class RobustReferenceTests
{
    private const double Tolerance = 1e-9;

    [Fact]
    public void Local_regression_agrees_with_statsmodels_lowess() => AssertRegressions(RobustReference.Stored);

    [Fact]
    public void The_bisquare_centre_agrees_with_statsmodels_and_SciPy() => AssertCentres(RobustReference.Stored);

    [Fact]
    public void The_Hampel_identifier_agrees_with_SciPys_median_absolute_deviation() => AssertIdentifiers(RobustReference.Stored);

    [StatisticsFact]
    public void All_three_agree_with_what_the_packages_give_today()
    {
        var now = RobustReference.MadeNow();
        AssertRegressions(now);
        AssertCentres(now);
        AssertIdentifiers(now);
    }

    // Two values that every textbook calls outliers: -44 and -2, at places 5 and 9.
    [Fact]
    public void Newcombs_two_odd_passage_times_of_light_are_far() =>
        Assert.Equal([5, 9], Far(RobustReference.Stored.GetProperty("identifiers")[0].Numbers("values")));

    private static void AssertRegressions(JsonElement reference)
    {
        var regressions = reference.GetProperty("regressions").EnumerateArray().ToList();
        Assert.Equal(7, regressions.Count);
        Assert.All(regressions, one => AssertNear(one.Numbers("fitted"), LocalRegression.Fit(
            one.Numbers("x"), one.Numbers("y"), one.GetProperty("neighbours").GetInt32(), one.GetProperty("rounds").GetInt32()).Fitted));
    }

    private static void AssertCentres(JsonElement reference)
    {
        Assert.All(reference.GetProperty("centres").EnumerateArray(), one =>
            AssertNear([one.GetProperty("centre").GetDouble()], [RobustLocation.Of(one.Numbers("values"), one.Numbers("uncertainties"))]));
        Assert.All(reference.GetProperty("mosts").EnumerateArray(), one =>
            AssertNear([one.GetProperty("centre").GetDouble()], [RobustLocation.OfMost(one.Numbers("values"), new double[one.Numbers("values").Length])]));
    }

    private static void AssertIdentifiers(JsonElement reference) => Assert.All(reference.GetProperty("identifiers").EnumerateArray(), one =>
    {
        var identifier = HampelIdentifier.Of(one.Numbers("values"), 3);
        AssertNear([one.GetProperty("centre").GetDouble(), one.GetProperty("scale").GetDouble()], [identifier.Centre, identifier.Scale]);
        Assert.Equal(one.Numbers("far").Select(place => (int)place), Far(one.Numbers("values")));
    });

    private static IEnumerable<int> Far(double[] values)
    {
        var identifier = HampelIdentifier.Of(values, 3);
        return Enumerable.Range(0, values.Length).Where(place => identifier.IsFar(values[place]));
    }

    private static void AssertNear(IEnumerable<double> expected, IEnumerable<double> actual) =>
        Assert.All(expected.Zip(actual), pair => Assert.True(Math.Abs(pair.First - pair.Second) < Tolerance, $"expected {pair.First:R}, got {pair.Second:R}"));
}
