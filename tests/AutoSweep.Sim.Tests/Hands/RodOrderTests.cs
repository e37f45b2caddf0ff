using AutoSweep.Sim.Hands;

namespace AutoSweep.Sim.Tests.Hands;

public class RodOrderTests
{
    [Theory]
    [InlineData("CLIP 61", 61, null)]
    [InlineData("61 OUT 0.300", 61, 0.3)]
    [InlineData("7 IN .05", 7, -0.05)]
    public void The_display_says_what_to_do(string text, int output, double? outward) => Assert.Equal(new(output, outward), RodOrder.Read(text));

    [Theory]
    [InlineData("DONE")]
    [InlineData("")]
    [InlineData("61 UP 0.300")]
    [InlineData("OUT 0.300")]
    public void Any_other_text_asks_for_nothing(string text) => Assert.Null(RodOrder.Read(text));
}
