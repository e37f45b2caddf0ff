using AutoSweep.Core;

namespace AutoSweep.Sim.Benches;

/// <summary>Finds the files that a command line or a bench names.</summary>
internal static class BenchLocator
{
    private static readonly string Program = AppContext.BaseDirectory;

    /// <summary>A bench file by its path, or a shipped one by its name.</summary>
    public static string Bench(string nameOrFile) =>
        Find("bench", nameOrFile, [nameOrFile, Path.Combine(Program, "benches", nameOrFile + ".json")]);

    /// <summary>A profile by its path (from the bench's folder), or a shipped one by its name.</summary>
    public static string Profile(string nameOrFile, string benchFolder) => Find(
        "generator profile", nameOrFile,
        [Path.Combine(benchFolder, nameOrFile), Path.Combine(Program, "generator-profiles", nameOrFile + ".json")]);

    private static string Find(string what, string name, string[] places) =>
        Path.GetFullPath(places.FirstOrDefault(File.Exists) ?? throw new BenchFaultException(
            BenchFault.BadFile, $"no {what} \"{name}\" at {string.Join(" nor ", places)}",
            $"a file, or the name of a shipped {what}", "Check the name."));
}
