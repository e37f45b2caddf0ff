using System.Text;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Wire;

/// <summary>Makes messages of bytes, however they were split or merged on the way: LF ends one, a CR before it is dropped.</summary>
internal sealed class LineAssembler(Action<ScpiError> report)
{
    /// <summary>More than any message of a job; a real meter's buffer holds a few hundred characters.</summary>
    public const int LongestMessage = 4096;

    private readonly StringBuilder line = new();
    private bool overrun;

    public IEnumerable<string> Take(ReadOnlyMemory<byte> bytes)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            var letter = bytes.Span[i];
            if (letter != (byte)'\n') Keep(letter);
            else if (End() is { } message) yield return message;
        }
    }

    private void Keep(byte letter)
    {
        if (overrun) return;
        line.Append((char)letter);
        if (line.Length <= LongestMessage) return;
        overrun = true;
        line.Clear();
        report(ScpiError.InputOverrun);
    }

    private string? End()
    {
        if (overrun)
        {
            overrun = false;
            return null;
        }

        var message = line.ToString();
        line.Clear();
        return message.EndsWith('\r') ? message[..^1] : message;
    }
}
