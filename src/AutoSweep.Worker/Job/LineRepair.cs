using System.Globalization;
using System.Text;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Files;

namespace AutoSweep.Worker.Job;

/// <summary>Sets damaged lines of an append-only file aside, when a person has said so, and never loses a byte.</summary>
/// <typeparam name="TEntry">What a line holds.</typeparam>
/// <param name="renumber">An entry with a new number; the numbers of the entries before it are told, old to new, for one that names
/// another.</param>
/// <param name="note">The entry that says what was done: its number, its time, the copy's name, the lines.</param>
public sealed class LineRepair<TEntry>(
    Func<TEntry, long, IReadOnlyDictionary<long, long>, TEntry> renumber, Func<long, DateTimeOffset, string, IReadOnlyList<int>,
        TEntry> note)
    where TEntry : class, INumberedEntry
{
    /// <summary>Keeps the file as it was under another name and puts one with only the trusted lines in its place.</summary>
    public void SetAside(string path, ChecksummedText<TEntry> damaged, TimeProvider clock)
    {
        var copy = $"{path}.damaged-{clock.GetUtcNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture)}";
        File.Copy(path, copy);
        var whole = new StringBuilder();
        var sequence = 0L;
        Dictionary<long, long> renumbered = [];
        foreach (var entry in damaged.Entries)
        {
            renumbered[entry.Sequence] = ++sequence;
            whole.Append(ChecksummedLine.Write(renumber(entry, sequence, renumbered))).Append('\n');
        }

        whole.Append(ChecksummedLine.Write(note(++sequence, clock.GetUtcNow(), Path.GetFileName(copy),
            [.. damaged.Damaged.Select(line => line.Line)]))).Append('\n');
        WholeFile.Write(path, whole.ToString());
    }

    /// <summary>The damaged lines in words, for a refusal.</summary>
    public string Describe(string path, ChecksummedText<TEntry> damaged) =>
        $"{path}, " + string.Join("; ", damaged.Damaged.Select(line => $"line {line.Line}: {line.Trouble}"));
}
