using AutoSweep.Core;

namespace AutoSweep.Worker.Files;

/// <summary>CSV files that people give and get.</summary>
public static class CsvFile
{
    // More lines than this are not read, but counted.
    private const int MostTroublesTold = 20;

    /// <summary>The text of a file.</summary>
    /// <exception cref="BenchFaultException">It cannot be read.</exception>
    public static async Task<string> ReadAsync(string path, CancellationToken cancellationToken)
    {
        var text = "";
        await GuardedAsync(path, async () => text = await File.ReadAllTextAsync(path, cancellationToken));
        return text;
    }

    /// <summary>Writes a file.</summary>
    /// <exception cref="BenchFaultException">It cannot be written.</exception>
    public static Task WriteAsync(string path, string text, CancellationToken cancellationToken) =>
        GuardedAsync(path, () => File.WriteAllTextAsync(path, text, cancellationToken));

    /// <summary>The refusal of a file with bad lines: all of it or nothing is taken in.</summary>
    /// <param name="name">The file's name.</param>
    /// <param name="troubles">What is wrong, a line of the file each.</param>
    /// <param name="expected">What was expected.</param>
    public static BenchFaultException Refuse(string name, IReadOnlyList<string> troubles, string expected) => new(
        BenchFault.BadFile,
        $"{name}: {string.Join("; ", troubles.Take(MostTroublesTold))}"
            + (troubles.Count > MostTroublesTold ? FormattableString.Invariant($"; and {troubles.Count - MostTroublesTold} more") : ""),
        expected, "mend these lines and import again; nothing was taken in");

    private static async Task GuardedAsync(string path, Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{path}: {fault.Message}", "a CSV file that can be read or written",
                "check the name, the folder and the permissions", fault);
        }
    }
}
