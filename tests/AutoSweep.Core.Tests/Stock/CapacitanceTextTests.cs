using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Tests.Stock;

public sealed class CapacitanceTextTests
{
    [Theory]
    [InlineData("104.5n", 104_500)]
    [InlineData("0.1045u", 104_500)]
    [InlineData("0.1 uF", 100_000)]
    [InlineData("0.1 \u00B5F", 100_000)]
    [InlineData("0.1\u03BC", 100_000)]
    [InlineData("820p", 820)]
    [InlineData("4n7", 4_700)]
    [InlineData("1u05", 1_050_000)]
    public void A_typed_value_is_understood_with_its_unit(string text, long picofarads) => Assert.Equal(picofarads, CapacitanceText.Parse(text)!.Value.Picofarads);

    [Theory]
    [InlineData("104,5n")]
    [InlineData("104.5")]
    [InlineData("104.5m")]
    [InlineData("-1n")]
    [InlineData("0p")]
    [InlineData("n")]
    [InlineData("")]
    [InlineData("4n7n")]
    [InlineData("999999999u")]
    public void Anything_else_is_refused(string text) => Assert.Null(CapacitanceText.Parse(text));
}
