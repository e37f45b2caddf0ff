using System.Globalization;
using System.Text;

namespace AutoSweep.Instruments.Scpi;

/// <summary>Cuts the bytes that come from an instrument into replies, however they were split or merged on the way.</summary>
/// <remarks>
/// A stream has no END line, so the terminator alone frames a reply (IEEE 488.2, 8.5). A definite block (8.7.9) may hold terminators; it
/// is cut by its count. An indefinite block (8.7.10) ends at the terminator.
/// </remarks>
public sealed class ReplyFramer
{
    private readonly List<byte> _bytes = [];
    private readonly byte _terminator;
    private int _searched;

    /// <summary>A framer.</summary>
    /// <param name="terminator">The last byte of a reply: LF, or CR for an instrument that sends nothing else.</param>
    public ReplyFramer(char terminator = '\n') => _terminator = (byte)terminator;

    /// <summary>How many bytes wait for the rest of their reply.</summary>
    public int Waiting => _bytes.Count;

    /// <summary>Adds what has come.</summary>
    public void Append(ReadOnlySpan<byte> bytes) => _bytes.AddRange(bytes);

    /// <summary>Takes the next whole reply, without its terminator, the blanks around it and a block's header.</summary>
    /// <returns>Null when more bytes are needed.</returns>
    public string? Take()
    {
        DropRestOfLastTerminator();
        var end = _bytes.IndexOf(_terminator, Math.Max(_searched, BlockEnd()));
        if (end < 0)
        {
            _searched = BlockEnd() > 0 ? 0 : _bytes.Count;
            return null;
        }

        var text = Encoding.Latin1.GetString([.. _bytes.Take(end)]);
        _bytes.RemoveRange(0, end + 1);
        _searched = 0;
        return WithoutBlockHeader(text.TrimStart(' ')).TrimEnd('\r', '\n', ' ');
    }

    /// <summary>Drops what waits.</summary>
    /// <returns>The text that was dropped.</returns>
    public string Clear()
    {
        var text = Encoding.Latin1.GetString([.. _bytes]);
        _bytes.Clear();
        _searched = 0;
        return text;
    }

    // CR LF where CR alone was to end a reply, or LF CR.
    private void DropRestOfLastTerminator()
    {
        while (_bytes.Count > 0 && _bytes[0] is (byte)'\r' or (byte)'\n' && _bytes[0] != _terminator)
        {
            _bytes.RemoveAt(0);
            _searched = Math.Max(0, _searched - 1);
        }
    }

    // Where a definite block's contents end: the terminator is looked for from there on. Beyond what has come while it is incomplete.
    private int BlockEnd()
    {
        if (_bytes.Count < 2 || _bytes[0] != '#' || _bytes[1] is < (byte)'1' or > (byte)'9')
            return 0;
        var digits = _bytes[1] - '0';
        if (_bytes.Count < 2 + digits)
            return _bytes.Count;
        var count = Encoding.Latin1.GetString([.. _bytes.Skip(2).Take(digits)]);
        return int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var length)
            ? (int)Math.Min(2L + digits + length, _bytes.Count)
            : 0;
    }

    private static string WithoutBlockHeader(string text)
    {
        if (text.Length < 2 || text[0] != '#' || !char.IsAsciiDigit(text[1]))
            return text;
        return text.Length >= 2 + (text[1] - '0') ? text[(2 + (text[1] - '0'))..] : text;
    }
}
