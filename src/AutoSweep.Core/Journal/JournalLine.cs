using System.Text.Json;

namespace AutoSweep.Core.Journal;

/// <summary>The text form of a journal entry: a <see cref="ChecksummedLine"/>.</summary>
public static class JournalLine
{
    /// <inheritdoc cref="ChecksummedLine.Json"/>
    public static JsonSerializerOptions Json => ChecksummedLine.Json;

    /// <inheritdoc cref="ChecksummedLine.Write"/>
    public static string Write(JournalEntry entry) => ChecksummedLine.Write(entry);

    /// <inheritdoc cref="ChecksummedLine.TryRead"/>
    public static bool TryRead(string line, out JournalEntry? entry, out string trouble) =>
        ChecksummedLine.TryRead(line, out entry, out trouble);
}
