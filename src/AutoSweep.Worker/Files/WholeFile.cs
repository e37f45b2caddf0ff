using AutoSweep.Core;

namespace AutoSweep.Worker.Files;

/// <summary>A file that is put in the place of an earlier one whole or not at all: a program that is killed leaves the earlier one.</summary>
public static class WholeFile
{
    /// <summary>Writes it beside the earlier one, then puts it in its place; makes the folder where it is not there yet.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">All of it.</param>
    /// <exception cref="BenchFaultException">The folder cannot be written.</exception>
    public static void Replace(string path, string text)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            Write(path, text);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{path} cannot be written ({fault.Message})", "a folder with room that this user may write",
                "mend the permissions or make room, or name another folder", fault);
        }
    }

    /// <summary>The same in a folder that is there, for whoever has words of their own for a folder that cannot be written.</summary>
    /// <exception cref="IOException">It cannot.</exception>
    /// <exception cref="UnauthorizedAccessException">It must not.</exception>
    internal static void Write(string path, string text)
    {
        var fresh = path + ".new";
        File.WriteAllText(fresh, text);
        File.Move(fresh, path, overwrite: true);
    }
}
