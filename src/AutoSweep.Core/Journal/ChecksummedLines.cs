namespace AutoSweep.Core.Journal;

/// <summary>Reads a file of checksummed lines.</summary>
public static class ChecksummedLines
{
    /// <summary>Reads entries from their bytes.</summary>
    /// <param name="bytes">The bytes, from the start of a line.</param>
    /// <param name="after">The number of the entry before them; 0 at the start of the file.</param>
    /// <remarks>
    /// A last line that cannot be trusted is the trace of a power cut while it was being written; every line is flushed before anyone
    /// acts on it. A bad line further up is damage, and so is a sequence number that does not follow its predecessor's.
    /// </remarks>
    public static ChecksummedText<TEntry> Read<TEntry>(ReadOnlySpan<byte> bytes, long after)
        where TEntry : class, INumberedEntry
    {
        List<TEntry> entries = [];
        List<DamagedLine> damaged = [];
        long sound = 0;
        var torn = false;
        for (var number = 1; !bytes.IsEmpty; number++)
        {
            var end = bytes.IndexOf((byte)'\n');
            var isLast = end < 0 || end == bytes.Length - 1;
            var line = System.Text.Encoding.UTF8.GetString(end < 0 ? bytes : bytes[..end]);
            var trusted = ChecksummedLine.TryRead<TEntry>(line, out var entry, out var trouble)
                && Follows(entries.Count == 0 ? after : entries[^1].Sequence, entry!, damaged.Count > 0, ref trouble);
            if (end < 0 || (isLast && !trusted))
            {
                torn = true;
                break;
            }

            if (trusted)
                entries.Add(entry!);
            else
                damaged.Add(new(number, trouble));
            sound += end + 1;
            bytes = bytes[(end + 1)..];
        }

        return new(entries, damaged, torn, sound);
    }

    private static bool Follows(long last, INumberedEntry entry, bool afterDamage, ref string trouble)
    {
        var expected = last + 1;
        if (entry.Sequence == expected || (afterDamage && entry.Sequence > expected))
            return true;
        trouble = $"its number is {entry.Sequence} where {expected} should follow";
        return false;
    }
}
