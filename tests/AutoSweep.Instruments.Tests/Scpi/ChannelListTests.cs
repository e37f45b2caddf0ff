using AutoSweep.Instruments.Scpi;
using FsCheck.Xunit;

namespace AutoSweep.Instruments.Tests.Scpi;

/// <summary>Channel lists: SCPI-1999, volume 1, 8.3.2.</summary>
public sealed class ChannelListTests
{
    [Theory]
    [InlineData("(@)", new int[0])]
    [InlineData("(@1)", new[] { 1 })]
    [InlineData("(@1,3:5)", new[] { 1, 3, 4, 5 })]
    [InlineData("(@ 1 , 3 : 5 )", new[] { 1, 3, 4, 5 })]
    [InlineData("(@5:3)", new[] { 5, 4, 3 })]
    [InlineData("(@16,2)", new[] { 16, 2 })]
    public void A_list_is_read_in_its_order(string text, int[] channels) => Assert.Equal(channels, ChannelList.TryParse(text)?.Channels);

    [Theory]
    [InlineData("")]
    [InlineData("1,2")]
    [InlineData("(1,2)")]
    [InlineData("(@1,)")]
    [InlineData("(@1:2:3)")]
    [InlineData("(@0)")]
    [InlineData("(@-1)")]
    [InlineData("(@1!2)")]
    [InlineData("(@1:2000000000)")]
    [InlineData("(@1")]
    public void What_is_no_list_is_refused(string text) => Assert.Null(ChannelList.TryParse(text));

    [Theory]
    [InlineData(new int[0], "(@)")]
    [InlineData(new[] { 1, 2 }, "(@1,2)")]
    [InlineData(new[] { 1, 3, 4, 5, 7 }, "(@1,3:5,7)")]
    public void A_list_is_written_short(int[] channels, string text) => Assert.Equal(text, new ChannelList(channels).ToString());

    [Property]
    public void What_is_written_reads_back(ushort mask)
    {
        var channels = Enumerable.Range(1, 16).Where(channel => (mask & (1 << (channel - 1))) != 0).ToArray();
        Assert.Equal(channels, ChannelList.TryParse(new ChannelList(channels).ToString())?.Channels);
    }
}
