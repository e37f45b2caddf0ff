using System.Text;
using AutoSweep.Core;

namespace AutoSweep.Worker.Job;

/// <summary>A file of lines that only grows: appends and returns only when the disk has it.</summary>
/// <remarks>A write that fails is cut off again, so that the file ends in a whole line whatever happens.</remarks>
public sealed class AppendOnlyFile : IDisposable
{
    private readonly FileStream _file;
    private readonly string _what;
    private long _sound;

    private AppendOnlyFile(FileStream file, string what, long sound) => (_file, _what, _sound) = (file, what, sound);

    /// <summary>Length in bytes of what is whole.</summary>
    public long SoundLength => _sound;

    /// <summary>Opens a file for appending after its last whole line.</summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="what">What it is, for messages: <c>the journal</c>.</param>
    /// <param name="sound">Length in bytes of what is whole; anything behind it is a torn line and is cut off.</param>
    /// <exception cref="BenchFaultException">The file cannot be opened for writing.</exception>
    public static AppendOnlyFile Open(string path, string what, long sound)
    {
        try
        {
            var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
            file.SetLength(sound);
            file.Position = sound;
            return new(file, what, sound);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw NotWritten(path, what, fault);
        }
    }

    /// <summary>Appends a line and waits until the disk has it.</summary>
    /// <param name="text">The line, without the line end.</param>
    /// <exception cref="BenchFaultException">The disk is full, gone or read-only. What was recorded before is untouched.</exception>
    public void Append(string text)
    {
        var line = Encoding.UTF8.GetBytes(text + "\n");
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
            throw NotWritten(_file.Name, _what, fault);
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

    private static BenchFaultException NotWritten(string path, string what, Exception fault) => new(
        BenchFault.JournalNotWritten, $"{what} {path} cannot be written ({fault.Message})", "room and permission to write it",
        "free some disk space or mend the disk, then go on; everything recorded so far is kept", fault) { AtTerminal = "a job with --resume" };
}
