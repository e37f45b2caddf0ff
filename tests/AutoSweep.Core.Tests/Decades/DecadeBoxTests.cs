using AutoSweep.Core.Decades;

namespace AutoSweep.Core.Tests.Decades;

public class DecadeBoxTests
{
    private static readonly DecadeBox Box = new()
    {
        StrayPicofarads = 50,
        Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 10_000 }, new() { StepPicofarads = 1000 }, new() { StepPicofarads = 100 }],
    };

    [Theory]
    [InlineData(104_350, "1-0-4-3", 104_350)]
    [InlineData(104_390, "1-0-4-3", 104_350)]
    [InlineData(104_410, "1-0-4-4", 104_450)]
    [InlineData(0, "0-0-0-0", 50)]
    [InlineData(9_999_999, "10-10-10-10", 1_111_050)]
    public void The_nearest_setting_counts_the_stray(double wanted, string setting, long total)
    {
        var nearest = Box.Nearest(wanted);

        Assert.Equal((setting, total), (nearest.ToString(), Box.Total(nearest).Picofarads));
    }

    // 100 nF is 1-0-0-0 or 0-10-0-0: a dial less to turn is a minute's part less.
    [Fact]
    public void Of_settings_that_are_equal_the_one_with_fewer_dials_to_turn_is_taken() =>
        Assert.Equal("0-10-0-0", Box.Nearest(100_050, new([0, 9, 0, 0])).ToString());

    [Fact]
    public void Where_dials_were_measured_the_nearest_measured_total_is_taken()
    {
        var measured = Box with { Decades = [new() { StepPicofarads = 1000, Steps = 3, MeasuredPicofarads = [960, 2100, 3000] }] };

        Assert.Equal("2", measured.Nearest(2140).ToString());
        Assert.Equal(2150, measured.Total(new([2])).Picofarads);
        Assert.True(measured.IsMeasured);
        Assert.False(Box.IsMeasured);
    }

    // GUM (JCGM 100:2008), 4.3.7: a limit a without more said of it counts as a / √3; 4.3.5 and 5.1.2: independent parts add in squares.
    [Fact]
    public void What_two_settings_have_in_common_is_no_uncertainty_of_their_difference()
    {
        var (one, other) = (new DialSetting([1, 0, 4, 0]), new DialSetting([1, 0, 8, 0]));

        Assert.Equal(Math.Sqrt((40.0 * 40) + (80.0 * 80)) / Math.Sqrt(3), Box.DifferenceSd(one, other), 9);
        Assert.Equal(Math.Sqrt((1000.0 * 1000) + (40.0 * 40)) / Math.Sqrt(3), Box.Sd(one), 9);
        Assert.Equal(0, Box.DifferenceSd(one, one));
    }

    [Theory]
    [InlineData("0-9-6-0", "1-0-4-0", 3)]
    [InlineData("1-0-4-0", "1-0-8-0", 1)]
    public void Turns_are_the_dials_that_change(string from, string to, int turns) =>
        Assert.Equal(turns, Setting(to).TurnsFrom(Setting(from)));

    [Fact]
    public void A_description_that_cannot_be_is_refused_with_what_was_found()
    {
        DecadeBox[] wrong =
        [
            Box with { Decades = [] },
            Box with { Decades = [new() { StepPicofarads = 1000 }, new() { StepPicofarads = 10_000 }] },
            Box with { Decades = [new() { StepPicofarads = 1000, Steps = 3, MeasuredPicofarads = [1000] }] },
            Box with { Decades = [new() { StepPicofarads = 1000, Steps = 2, MeasuredPicofarads = [1000, 200] }] },
        ];

        Assert.All(wrong, box => Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(() => DecadeBoxChecks.Check(box, "bench.json")).Kind));
        DecadeBoxChecks.Check(Box, "bench.json");
    }

    private static DialSetting Setting(string positions) => new([.. positions.Split('-').Select(one => int.Parse(one, System.Globalization.CultureInfo.InvariantCulture))]);
}
