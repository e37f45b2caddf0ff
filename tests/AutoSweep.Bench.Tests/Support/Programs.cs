using System.Diagnostics;
using System.Runtime.InteropServices;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>The programs under test, started as their users start them.</summary>
internal static class Programs
{
    private static readonly string Configuration = new DirectoryInfo(AppContext.BaseDirectory).Name;
    private static readonly string WorkerFolder = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "AutoSweep.Worker",
        Configuration));

    public static string Worker { get; } = Path.Combine(WorkerFolder, "autosweep.dll");

    public static string Simulator { get; } = Path.Combine(WorkerFolder, "sim", "autosweep-sim.dll");

    /// <summary>Reserves and releases parts at a ledger until it is killed.</summary>
    public static string Reserving { get; } = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "AutoSweep.Reserving",
        Configuration, "AutoSweep.Reserving.dll"));

    public static Process Start(string program, params IEnumerable<string> arguments) =>
        Launch(DotnetHost, ["exec", program, .. arguments]);

    /// <summary>The words that start a program from a command line.</summary>
    public static IEnumerable<string> Command(string program, params IEnumerable<string> arguments) => [DotnetHost, "exec", program, .. arguments];

    /// <summary>Starts a program in a folder of its own.</summary>
    public static Process StartIn(string folder, string program, params IEnumerable<string> arguments) =>
        Launch(DotnetHost, ["exec", program, .. arguments], folder);

    /// <summary>Starts a shell line in which "$@" is the program with its arguments: for limits that a shell can set.</summary>
    public static Process StartInShell(string line, string program, params IEnumerable<string> arguments) =>
        Launch("/bin/bash", ["-c", line, "bash", DotnetHost, "exec", program, .. arguments]);

    // <root>/shared/Microsoft.NETCore.App/<version>/ and <root>/dotnet.
    internal static string DotnetHost => Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..",
        "dotnet"));

    /// <summary>A path in the repository.</summary>
    public static string InRepository(string path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "AutoSweep.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("AutoSweep.sln stands in no folder above the tests.");
        return Path.Combine(folder.FullName, path);
    }

    /// <summary>Starts the SDK itself: dotnet with words of its own.</summary>
    public static Process StartSdk(string folder, params IEnumerable<string> words)
    {
        var start = StartOf(DotnetHost, words, folder);
        // `dotnet test` tells its children where its own MSBuild lies; a person's terminal does not.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("MSBuild", StringComparison.OrdinalIgnoreCase)).ToList())
            start.Environment.Remove(name);
        return Process.Start(start)!;
    }

    private static Process Launch(string file, IEnumerable<string> arguments, string folder = "") => Process.Start(StartOf(file, arguments, folder))!;

    private static ProcessStartInfo StartOf(string file, IEnumerable<string> arguments, string folder) => new(file, arguments)
    {
        WorkingDirectory = folder,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    };
}
