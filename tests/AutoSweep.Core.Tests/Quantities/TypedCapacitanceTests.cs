using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Quantities;

public class TypedCapacitanceTests
{
    [Theory]
    [InlineData("104.5n", 104_500)]
    [InlineData("0.1045u", 104_500)]
    [InlineData("104500p", 104_500)]
    [InlineData(" 104.5 nF ", 104_500)]
    [InlineData("0.1045 µF", 104_500)]
    [InlineData("0.1045μF", 104_500)]
    [InlineData("104N5", 104_500)] // IEC 60062: the unit in the place of the point
    [InlineData("4p7", 4.7)]
    [InlineData("2u2", 2_200_000)]
    [InlineData("0p", 0)]
    [InlineData("12.34p", 12.34)]
    public void What_a_person_types_is_understood(string typed, double picofarads) =>
        Assert.Equal(picofarads, TypedCapacitance.Picofarads(typed)!.Value, picofarads * 1e-12);

    [Theory]
    [InlineData("104.5")]
    [InlineData("104,5n")]
    [InlineData("-3p")]
    [InlineData("1.2n3")]
    [InlineData("n")]
    [InlineData("")]
    [InlineData("104.5m")]
    [InlineData("1e5p")]
    public void What_could_be_misunderstood_is_not_taken(string typed) => Assert.Null(TypedCapacitance.Picofarads(typed));

    [Fact]
    public void The_point_is_a_point_in_every_culture()
    {
        using var _ = Culture.DecimalComma();
        Assert.Equal(104_500, TypedCapacitance.Picofarads("104.5n")!.Value, 1e-6);
    }
}
