using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Quantities;

public sealed class UncertainFigureTests
{
    // JCGM 100:2008 (GUM), from memory. 7.2.6: y = 10.057 62 ohm with u = 27 mohm is to be rounded to 10.058 ohm, and an uncertainty of 28.05 kHz down to
    // 28 kHz (here U = 2 * 14.025 kHz of an invented 1234.5 kHz). 7.2.2: m = 100.021 47 g with u = 0.35 mg; k = 2 makes it 0.000 70 g.
    [Theory]
    [InlineData(10.05762, 0.027, "10.058 ± 0.054")]
    [InlineData(1234.5, 14.025, "1235 ± 28")]
    [InlineData(100.02147, 0.00035, "100.02147 ± 0.00070")]
    public void The_guides_own_examples_come_out_as_it_rounds_them(double value, double standardUncertainty, string printed) =>
        Assert.Equal(printed, new UncertainFigure(value, standardUncertainty).ToString());

    [Theory]
    [InlineData(104.567, 0.06125, "104.57 ± 0.12")]
    [InlineData(104_567, 61.25, "104570 ± 120")]
    [InlineData(5.372, 0.04985, "5.37 ± 0.10")]
    [InlineData(-0.0004, 0.05, "0.00 ± 0.10")]
    [InlineData(5.372, 0, "5.3720")]
    [InlineData(104.567, double.NaN, "104.57")]
    [InlineData(0, 0, "0.0000")]
    public void A_value_stops_where_its_expanded_uncertainty_of_two_digits_stops(double value, double standardUncertainty, string printed) =>
        Assert.Equal(printed, new UncertainFigure(value, standardUncertainty).ToString());

    [Fact]
    public void Fewer_decimals_can_be_asked_for() =>
        Assert.Equal("0.015 ± 0.001", new UncertainFigure(0.0145, 0.000435) { MostDecimals = 3 }.ToString());
}
