using AutoSweep.Core.Generator;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Page.AtBench;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class CurvePictureTests
{
    private static readonly PeakFit Fit = new(new(142_120), 800, 18_000, ResponseLaw.Series,
        new(TunedResponse.Series(142_120, 7.9), Level.FromMillivolts(4.5), default), 0.01);

    private static readonly ShownReading[] Readings =
        [new(1, default, 124_000, 3.2, true), new(2, default, 142_000, 4.5, true), new(3, default, 160_000, 3.1, false)];

    [Fact]
    public void Without_a_capacitance_there_is_no_curve() => Assert.Null(CurvePicture.Of([new(1, default, null, 4, true)], null));

    [Fact]
    public void Before_there_is_a_fit_the_readings_stand_within_the_frame()
    {
        var picture = CurvePicture.Of(Readings, null)!;

        Assert.Equal("", picture.Path());
        Assert.All(picture.Readings, reading =>
        {
            Assert.InRange(picture.X(reading.Picofarads!.Value), 70, 624);
            Assert.InRange(picture.Y(reading.Millivolts), 30, 270);
        });
    }

    [Fact]
    public void One_reading_alone_has_a_place() => Assert.InRange(CurvePicture.Of([Readings[0]], null)!.X(124_000), 70, 624);

    [Fact]
    public void More_capacitance_stands_farther_right_and_more_level_higher()
    {
        var picture = CurvePicture.Of(Readings, Fit)!;

        Assert.True(picture.X(124_000) < picture.X(142_120) && picture.X(142_120) < picture.X(160_000));
        Assert.True(picture.Y(4.5) < picture.Y(3.1));
    }

    [Fact]
    public void The_curve_is_highest_at_the_peak_of_the_fit()
    {
        var picture = CurvePicture.Of(Readings, Fit)!;

        // Every point of an SVG path is "x y" after its letter (SVG 2, 9.3); y grows downwards.
        var points = picture.Path().Split(['M', 'L'], StringSplitOptions.RemoveEmptyEntries)
            .Select(point => point.Split(' ').Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture)).ToArray()).ToList();

        Assert.Equal(picture.X(142_120), points.MinBy(point => point[1])![0], 6.0);
        Assert.All(points, point => Assert.InRange(point[1], 30, 270.1));
    }

    [Fact]
    public void The_band_is_one_standard_deviation_to_either_side()
    {
        var picture = CurvePicture.Of(Readings, Fit)!;

        Assert.Equal(picture.X(141_320), picture.Band.X, 0.2);
        Assert.Equal(picture.X(142_920), picture.Band.X + picture.Band.Width, 0.2);
    }

    [Fact]
    public void A_band_that_is_finer_than_a_line_is_still_seen() => Assert.Equal(2, CurvePicture.Of(Readings, Fit with { PeakSdPicofarads = 1 })!.Band.Width);

    [Theory]
    [InlineData(0, 5.04, 4, new[] { 0.0, 2, 4 })]
    [InlineData(93.2, 190.7, 6, new[] { 100.0, 120, 140, 160, 180 })]
    [InlineData(0.94, 1.06, 6, new[] { 0.94, 0.96, 0.98, 1, 1.02, 1.04, 1.06 })]
    public void Ticks_stand_at_round_places(double from, double to, int most, double[] expected) => Assert.Equal(expected, AxisTicks.Between(from, to, most));
}
