using System.Text;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Journal;

public sealed class ChecksummedLinesTests
{
    [Fact]
    public void A_tail_goes_on_where_the_lines_before_it_ended()
    {
        var tail = Encoding.UTF8.GetBytes(ChecksummedLine.Write(new StockEntry(8, Some.Time, new BinsFixed(null))) + "\n");

        Assert.Single(ChecksummedLines.Read<StockEntry>(tail, after: 7).Entries);
        Assert.True(ChecksummedLines.Read<StockEntry>(tail, after: 6).TornTail);
    }
}
