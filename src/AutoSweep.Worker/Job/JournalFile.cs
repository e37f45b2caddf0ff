using System.Text;
using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>The journal on disk: appends a line and returns only when it has reached the disk.</summary>
/// <remarks>A write that fails is cut off again, so that the file ends in a whole line whatever happens.</remarks>
public sealed class JournalFile : IDisposable
{
    private readonly FileStream _file;
    private long _sound;

    private JournalFile(FileStream file, long sound) => (_file, _sound) = (file, sound);

    /// <summary>Reads the journal that is there.</summary>
    /// <param name="path">The file; need not exist.</param>
    public static JournalText Read(string path) => File.Exists(path) ? JournalText.Read(File.ReadAllBytes(path)) : new([], [], false, 0);

    /// <summary>Opens the journal for appending after its last whole line.</summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="sound">Length in bytes of what is whole; anything behind it is a torn line and is cut off.</param>
    /// <exception cref="BenchFaultException">The file cannot be opened for writing.</exception>
    public static JournalFile Open(string path, long sound)
    {
        try
        {
            var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
            file.SetLength(sound);
            file.Position = sound;
            return new(file, sound);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw NotWritten(path, fault);
        }
    }

    /// <summary>Appends an entry and waits until the disk has it.</summary>
    /// <exception cref="BenchFaultException">The disk is full, gone or read-only. What was recorded before is untouched.</exception>
    public void Append(JournalEntry entry)
    {
        var line = Encoding.UTF8.GetBytes(JournalLine.Write(entry) + "\n");
        try
        {
            _file.Write(line);
            _file.Flush(flushToDisk: true);
            _sound += line.Length;
        }
        // A file-size limit comes as ArgumentOutOfRangeException, a full disk as IOException.
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            CutBack();
            throw NotWritten(_file.Name, fault);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    private void CutBack()
    {
        try
        {
            _file.SetLength(_sound);
            _file.Position = _sound;
        }
        catch (IOException)
        {
            // The disk is beyond even that; the next start finds a torn last line and drops it.
        }
    }

    private static BenchFaultException NotWritten(string path, Exception fault) => new(
        BenchFault.JournalNotWritten, $"the journal {path} cannot be written ({fault.Message})",
        "room and permission to write it",
        "free some disk space or mend the disk, then go on with --resume; everything recorded so far is kept",
        fault);
}
