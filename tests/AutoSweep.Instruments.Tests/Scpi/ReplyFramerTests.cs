using System.Text;
using AutoSweep.Instruments.Scpi;
using FsCheck.Xunit;

namespace AutoSweep.Instruments.Tests.Scpi;

public sealed class ReplyFramerTests
{
    private static readonly string[] Replies = ["+1.25E-03", "0,\"No error\"", "(@1,3:5)", "A,B,C,1.0", "", "x"];

    [Property(MaxTest = 300)]
    public void Replies_come_out_the_same_however_the_bytes_were_split_and_merged(int[] cuts, bool carriageReturn)
    {
        var end = carriageReturn ? "\r\n" : "\n";
        var bytes = Encoding.ASCII.GetBytes(string.Concat(Replies.Select(reply => reply + end)) + "#15a\nb\nc" + end + "last" + end);
        Assert.Equal([.. Replies, "a\nb\nc", "last"], Fed(new ReplyFramer(), bytes, cuts));
    }

    [Theory] // IEEE 488.2, 8.7.9: "#", the number of digits, the count, the bytes
    [InlineData("#15HELLO\n", "HELLO")]
    [InlineData("#3012(@1,3:5,7,9)\n", "(@1,3:5,7,9)")]
    [InlineData("#16(@1)\r\n\n", "(@1)")]
    [InlineData("#212line1\nline2\n\n", "line1\nline2")]
    public void A_definite_block_is_cut_by_its_count(string wire, string text) =>
        Assert.Equal([text], Fed(new ReplyFramer(), Encoding.ASCII.GetBytes(wire), [3, 1]));

    [Fact] // IEEE 488.2, 8.7.10
    public void An_indefinite_block_ends_at_the_terminator() =>
        Assert.Equal(["(@1,2)"], Fed(new ReplyFramer(), "#0(@1,2)\n"u8.ToArray(), []));

    [Fact]
    public void Where_CR_ends_a_reply_a_LF_after_it_is_dropped() =>
        Assert.Equal(["1", "2", "3"], Fed(new ReplyFramer('\r'), "1\r2\r\n3\r"u8.ToArray(), [1, 3]));

    [Fact]
    public void What_waits_for_its_end_can_be_dropped()
    {
        var framer = new ReplyFramer();
        framer.Append("+1.2"u8);
        Assert.Null(framer.Take());
        Assert.Equal("+1.2", framer.Clear());
        framer.Append("5\n"u8);
        Assert.Equal("5", framer.Take());
    }

    private static List<string> Fed(ReplyFramer framer, byte[] bytes, int[] cuts)
    {
        List<string> replies = [];
        var (at, turn) = (0, 0);
        while (at < bytes.Length)
        {
            var wanted = turn < cuts.Length ? 1 + (Math.Abs(cuts[turn] % 12)) : bytes.Length;
            var count = Math.Min(wanted, bytes.Length - at);
            framer.Append(bytes.AsSpan(at, count));
            (at, turn) = (at + count, turn + 1);
            while (framer.Take() is { } reply)
                replies.Add(reply);
        }

        return replies;
    }
}
