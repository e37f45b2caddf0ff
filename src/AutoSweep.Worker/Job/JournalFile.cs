using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>The journal on disk: appends an entry and returns only when it has reached the disk.</summary>
public sealed class JournalFile : IDisposable
{
    private readonly AppendOnlyFile _file;

    private JournalFile(AppendOnlyFile file) => _file = file;

    /// <summary>Reads the journal that is there.</summary>
    /// <param name="path">The file; need not exist.</param>
    /// <remarks>Another program may be appending at the same time; a line that is being written does not count yet.</remarks>
    public static JournalText Read(string path)
    {
        if (!File.Exists(path))
            return new([], [], false, 0);
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        file.CopyTo(bytes);
        return JournalText.Read(bytes.ToArray());
    }

    /// <summary>Opens the journal for appending after its last whole line.</summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="sound">Length in bytes of what is whole; anything behind it is a torn line and is cut off.</param>
    /// <exception cref="BenchFaultException">The file cannot be opened for writing.</exception>
    public static JournalFile Open(string path, long sound) => new(AppendOnlyFile.Open(path, "the journal", sound));

    /// <summary>Appends an entry and waits until the disk has it.</summary>
    /// <exception cref="BenchFaultException">The disk is full, gone or read-only. What was recorded before is untouched.</exception>
    public void Append(JournalEntry entry) => _file.Append(JournalLine.Write(entry));

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();
}
