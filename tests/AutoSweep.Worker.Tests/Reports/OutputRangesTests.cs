using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Tests.Reports;

public sealed class OutputRangesTests
{
    [Theory]
    [InlineData(new int[0], "")]
    [InlineData(new[] { 7 }, "7")]
    [InlineData(new[] { 2, 1 }, "1, 2")]
    [InlineData(new[] { 9, 1, 2, 3, 4, 5, 7 }, "1 to 5, 7, 9")]
    public void Neighbours_are_drawn_together(int[] outputs, string text) => Assert.Equal(text, OutputRanges.Text(outputs));
}
