using AutoSweep.Core;
using AutoSweep.Core.Generator;

namespace AutoSweep.Worker.Curves;

/// <summary>A level curve's CSV file on disk.</summary>
public static class CurveFile
{
    // More lines than this are not read, but counted.
    private const int MostTroublesTold = 20;

    /// <summary>Reads a file whole.</summary>
    /// <exception cref="BenchFaultException">It cannot be read, or has a bad line; every bad line is named.</exception>
    public static async Task<CurveCsvImport> ReadAsync(string path, GeneratorProfile profile, CancellationToken cancellationToken)
    {
        var text = "";
        await GuardedAsync(path, async () => text = await File.ReadAllTextAsync(path, cancellationToken));
        return Parse(text, path, profile);
    }

    /// <summary>Understands a file whose text is at hand.</summary>
    /// <param name="text">The CSV text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="profile">The generator whose outputs it may name.</param>
    /// <exception cref="BenchFaultException">It has a bad line; every bad line is named.</exception>
    public static CurveCsvImport Parse(string text, string name, GeneratorProfile profile)
    {
        var import = new CurveCsvReader(profile).Read(text);
        return import.Troubles.Count > 0 ? throw Refuse(name, import.Troubles) : import;
    }

    /// <summary>Writes a file whole.</summary>
    /// <exception cref="BenchFaultException">It cannot be written.</exception>
    public static Task WriteAsync(string path, string text, CancellationToken cancellationToken) =>
        GuardedAsync(path, () => File.WriteAllTextAsync(path, text, cancellationToken));

    private static BenchFaultException Refuse(string path, IReadOnlyList<string> troubles) => new(
        BenchFault.BadFile,
        $"{path}: {string.Join("; ", troubles.Take(MostTroublesTold))}"
            + (troubles.Count > MostTroublesTold ? $"; and {troubles.Count - MostTroublesTold} more" : ""),
        "a level curve without a bad line", "mend these lines and import again; nothing was taken in");

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
