using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Files;

namespace AutoSweep.Worker.Curves;

/// <summary>A level curve's CSV file on disk.</summary>
public static class CurveFile
{
    /// <summary>Reads a file whole.</summary>
    /// <exception cref="BenchFaultException">It cannot be read, or has a bad line; every bad line is named.</exception>
    public static async Task<CurveCsvImport> ReadAsync(string path, GeneratorProfile profile, CancellationToken cancellationToken)
    {
        return Parse(await CsvFile.ReadAsync(path, cancellationToken), path, profile);
    }

    /// <summary>Understands a file whose text is at hand.</summary>
    /// <param name="text">The CSV text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="profile">The generator whose outputs it may name.</param>
    /// <exception cref="BenchFaultException">It has a bad line; every bad line is named.</exception>
    public static CurveCsvImport Parse(string text, string name, GeneratorProfile profile)
    {
        var import = new CurveCsvReader(profile).Read(text);
        return import.Troubles.Count > 0 ? throw CsvFile.Refuse(name, import.Troubles, "a level curve without a bad line") : import;
    }

    /// <summary>Writes a file whole.</summary>
    /// <exception cref="BenchFaultException">It cannot be written.</exception>
    public static Task WriteAsync(string path, string text, CancellationToken cancellationToken) =>
        CsvFile.WriteAsync(path, text, cancellationToken);
}
