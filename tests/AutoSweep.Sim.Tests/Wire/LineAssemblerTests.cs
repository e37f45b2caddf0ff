using System.Text;
using AutoSweep.Sim.Scpi;
using AutoSweep.Sim.Wire;
using FsCheck.Xunit;

namespace AutoSweep.Sim.Tests.Wire;

/// <summary>Bytes become messages, however they come.</summary>
public class LineAssemblerTests
{
    [Property]
    public void Messages_do_not_depend_on_where_the_bytes_are_split(byte[] sizes)
    {
        const string sent = "*IDN?\nVOLT:AC:RANG 0.1;BAND 3\r\n\nREAD?\r\nlast";
        var bytes = Encoding.ASCII.GetBytes(sent);
        var (lines, taken, next) = (new LineAssembler(_ => { }), new List<string>(), 0);
        foreach (var size in (sizes ?? []).Select(size => size % 7).Append(bytes.Length))
        {
            var count = Math.Min(size, bytes.Length - next);
            taken.AddRange(lines.Take(bytes.AsMemory(next, count)));
            next += count;
        }

        Assert.Equal(["*IDN?", "VOLT:AC:RANG 0.1;BAND 3", "", "READ?"], taken);
    }

    [Fact]
    public void A_message_without_end_is_dropped_with_an_error_and_the_next_one_is_taken()
    {
        var errors = new List<ScpiError>();
        var lines = new LineAssembler(errors.Add);
        var flood = Encoding.ASCII.GetBytes(new string('A', 10_000) + "\n*IDN?\n");
        Assert.Equal(["*IDN?"], lines.Take(flood));
        Assert.Equal([ScpiError.InputOverrun], errors);
    }
}
