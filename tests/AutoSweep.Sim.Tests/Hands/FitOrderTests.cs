using AutoSweep.Sim.Hands;

namespace AutoSweep.Sim.Tests.Hands;

/// <summary>What the hands make of the LCR meter's display.</summary>
public class FitOrderTests
{
    [Theory]
    [InlineData("61: P00017 + P00022", 61, new[] { 17, 22 })]
    [InlineData("9:P00003", 9, new[] { 3 })]
    [InlineData("17 + 22", null, new[] { 17, 22 })]
    [InlineData("parts: 2 + 5", null, new[] { 2, 5 })]
    [InlineData("61:", 61, new int[0])]
    [InlineData("done", null, new int[0])]
    [InlineData("", null, new int[0])]
    public void The_output_stands_before_the_colon_and_the_parts_after_it(string text, int? output, int[] parts)
    {
        var order = FitOrder.Read(text);
        Assert.Equal(output, order.Output);
        Assert.Equal(parts, order.Parts);
        Assert.False(order.IsOld);
    }

    [Fact]
    public void Old_after_the_colon_asks_for_the_capacitor_that_came_off()
    {
        var order = FitOrder.Read("61: OLD");
        Assert.Equal((61, true), (order.Output, order.IsOld));
        Assert.Empty(order.Parts);
    }
}
