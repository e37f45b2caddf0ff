using System.Globalization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Quantities;

public class TypedLevelTests
{
    [Theory]
    [InlineData("12.4", 0.0124, 1e-4)]
    [InlineData("12.40", 0.0124, 1e-5)]
    [InlineData("12,4", 0.0124, 1e-4)]
    [InlineData("12.4m", 0.0124, 1e-4)]
    [InlineData(" 12.4 mV ", 0.0124, 1e-4)]
    [InlineData("12.4 MV", 0.0124, 1e-4)]
    [InlineData("0.0124 V", 0.0124, 1e-4)]
    [InlineData(".0124v", 0.0124, 1e-4)]
    [InlineData("850u", 0.00085, 1e-6)]
    [InlineData("850 µV", 0.00085, 1e-6)]
    [InlineData("5", 0.005, 1e-3)]
    [InlineData("0", 0, 1e-3)]
    public void A_level_is_understood_with_the_step_of_its_last_digit(string typed, double volts, double step)
    {
        var level = TypedLevel.Parse(typed)!.Value;

        Assert.Equal(volts, level.Volts, 1e-12);
        Assert.Equal(step, level.StepVolts, 1e-12);
    }

    [Fact]
    public void A_bare_number_is_in_the_unit_of_the_prompt() => Assert.Equal(0.0124, TypedLevel.Parse("0.0124", unitVolts: 1)!.Value.Volts, 1e-12);

    [Theory]
    [InlineData("")]
    [InlineData("mV")]
    [InlineData(".")]
    [InlineData("-12.4")]
    [InlineData("12.4.1")]
    [InlineData("1.234,5")]
    [InlineData("12.4 mA")]
    [InlineData("12.4 nF")]
    [InlineData("1e3")]
    public void What_is_no_level_is_none(string typed) => Assert.Null(TypedLevel.Parse(typed));

    [Fact]
    public void A_culture_with_decimal_commas_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            Assert.Equal(0.0124, TypedLevel.Parse("12.4")!.Value.Volts, 1e-12);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
