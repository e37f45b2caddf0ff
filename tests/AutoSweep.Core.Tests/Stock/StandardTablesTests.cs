using System.Text.Json;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Stock;

/// <summary>The tables against those of IEC 60062 and IEC 60063 in tests/Reference, whose sources the files name.</summary>
public sealed class StandardTablesTests
{
    [Fact]
    public void Every_tolerance_letter_of_IEC_60062_means_what_the_standard_says()
    {
        using var file = JsonDocument.Parse(Repository.Text("tests/Reference/iec60062_tolerance.json"));
        var symmetric = file.RootElement.GetProperty("symmetric_percent").EnumerateObject()
            .ToDictionary(one => one.Name, one => (-one.Value.GetDouble(), one.Value.GetDouble()));
        var asymmetric = file.RootElement.GetProperty("asymmetric_percent").EnumerateObject()
            .ToDictionary(one => one.Name, one => (one.Value[0].GetDouble(), one.Value[1].GetDouble()));

        Assert.Equal(symmetric.Concat(asymmetric).OrderBy(one => one.Key), ToleranceLetters.Percent.OrderBy(one => one.Key));
    }

    [Theory]
    [InlineData(95_000, 100_000L, "J", true)]
    [InlineData(94_999, 100_000L, "J", false)]
    [InlineData(179_000, 100_000L, "Z", true)]
    [InlineData(79_000, 100_000L, "Z", false)]
    [InlineData(1, null, "J", true)]
    [InlineData(1, 100_000L, null, true)]
    public void A_part_fits_its_letter_up_to_the_edge(long measured, long? nominal, string? letter, bool fits) =>
        Assert.Equal(fits, ToleranceLetters.Fits(measured, nominal, letter));

    [Theory]
    [InlineData("E24")]
    [InlineData("E96")]
    public void The_series_are_those_of_IEC_60063(string name)
    {
        using var file = JsonDocument.Parse(Repository.Text("tests/Reference/iec60063.json"));
        var series = name == "E24" ? PreferredSeries.E24 : PreferredSeries.E96;

        Assert.Equal(file.RootElement.GetProperty(name).EnumerateArray().Select(value => value.GetInt32()), series.Steps);
        Assert.Equal(file.RootElement.GetProperty("series_tolerance_percent").GetProperty(name).GetDouble(),
            ToleranceLetters.Percent[series.ToleranceLetter].HighestPercent);
    }

    [Fact]
    public void The_values_of_a_series_go_on_over_the_decades()
    {
        Assert.Equal([91_000, 100_000, 110_000], PreferredSeries.E24.Between(90_000, 110_000));
        Assert.Equal([97_600, 100_000, 102_000], PreferredSeries.E96.Between(97_000, 103_000));
    }
}
