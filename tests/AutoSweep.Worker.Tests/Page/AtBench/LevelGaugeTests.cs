using AutoSweep.Worker.Page.AtBench;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class LevelGaugeTests
{
    [Theory]
    [InlineData(0.4, "in the band")]
    [InlineData(-0.5, "in the band")]
    [InlineData(0.6, "too loud")]
    [InlineData(-3, "too soft")]
    public void The_word_goes_by_the_band(double decibels, string word) => Assert.Equal(word, new LevelGauge(new(decibels, 0.5, null)).Word);

    [Theory]
    [InlineData(0, 320)]
    [InlineData(-6, 20)]
    [InlineData(6, 620)]
    [InlineData(-40, 20)]
    public void A_level_off_the_scale_stands_at_its_end(double decibels, double place) => Assert.Equal(place, LevelGauge.X(decibels));

    [Fact]
    public void The_band_lies_about_the_middle() => Assert.Equal((295, 50), new LevelGauge(new(2, 0.5, null)).Band);
}
