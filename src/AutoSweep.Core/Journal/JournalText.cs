namespace AutoSweep.Core.Journal;

/// <summary>A whole journal as it was read: the entries that can be trusted, and the lines that cannot.</summary>
/// <param name="Entries">The trusted entries in order.</param>
/// <param name="Damaged">The lines in the middle that cannot be trusted.</param>
/// <param name="TornTail">Whether the last line was cut off while it was written. Nobody was told of it, so nothing is lost with it.</param>
/// <param name="SoundLength">Length in bytes up to the end of the last whole line.</param>
public sealed record JournalText(IReadOnlyList<JournalEntry> Entries, IReadOnlyList<DamagedLine> Damaged, bool TornTail, long SoundLength)
{
    /// <summary>Reads a journal from its bytes.</summary>
    /// <remarks>
    /// A last line that cannot be trusted is the trace of a power cut while it was being written; every line is flushed before anyone
    /// acts on it. A bad line further up is damage, and so is a sequence number that does not follow its predecessor's.
    /// </remarks>
    public static JournalText Read(ReadOnlySpan<byte> bytes)
    {
        List<JournalEntry> entries = [];
        List<DamagedLine> damaged = [];
        long sound = 0;
        var torn = false;
        for (var number = 1; !bytes.IsEmpty; number++)
        {
            var end = bytes.IndexOf((byte)'\n');
            var isLast = end < 0 || end == bytes.Length - 1;
            var line = System.Text.Encoding.UTF8.GetString(end < 0 ? bytes : bytes[..end]);
            var trusted = JournalLine.TryRead(line, out var entry, out var trouble) && Follows(entries, entry!, damaged.Count > 0, ref trouble);
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

    private static bool Follows(List<JournalEntry> entries, JournalEntry entry, bool afterDamage, ref string trouble)
    {
        var expected = entries.Count == 0 ? 1 : entries[^1].Sequence + 1;
        if (entry.Sequence == expected || (afterDamage && entry.Sequence > expected))
            return true;
        trouble = $"its number is {entry.Sequence} where {expected} should follow";
        return false;
    }
}
