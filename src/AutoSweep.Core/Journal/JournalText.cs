namespace AutoSweep.Core.Journal;

/// <summary>A whole journal as it was read: the entries that can be trusted, and the lines that cannot.</summary>
public sealed record JournalText : ChecksummedText<JournalEntry>
{
    /// <summary>What was read.</summary>
    public JournalText(IReadOnlyList<JournalEntry> entries, IReadOnlyList<DamagedLine> damaged, bool tornTail, long soundLength)
        : base(entries, damaged, tornTail, soundLength)
    {
    }

    /// <summary>Reads a journal from its bytes.</summary>
    public static JournalText Read(ReadOnlySpan<byte> bytes)
    {
        var text = ChecksummedLines.Read<JournalEntry>(bytes, after: 0);
        return new(text.Entries, text.Damaged, text.TornTail, text.SoundLength);
    }
}
