using AutoSweep.Core;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>A driver's folder as it was read: text, not yet understood.</summary>
public sealed record DriverFolder
{
    /// <summary>The list of commands as the manual prints them.</summary>
    public const string CommandsName = "commands.txt";

    /// <summary>The folder of the conversations.</summary>
    public const string SessionsName = "sessions";

    /// <summary>What a person should know.</summary>
    public const string ReadmeName = "README.md";

    /// <summary>The folder.</summary>
    public required string Folder { get; init; }

    /// <summary>The driver's name: the folder's.</summary>
    public string Name => Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(Folder)));

    /// <summary>The text of <c>driver.json</c>.</summary>
    public required string DriverText { get; init; }

    /// <summary>The lines of <c>commands.txt</c>; null where it is missing.</summary>
    public IReadOnlyList<string>? CommandLines { get; init; }

    /// <summary>The text of <c>README.md</c>; null where it is missing.</summary>
    public string? Readme { get; init; }

    /// <summary>The session files with their lines, in the order of their names.</summary>
    public IReadOnlyList<(string Path, IReadOnlyList<string> Lines)> Sessions { get; init; } = [];

    /// <summary>The path of one of its files, for messages.</summary>
    public string FileOf(string name) => Path.Combine(Folder, name);

    /// <summary>Reads a folder.</summary>
    /// <exception cref="BenchFaultException">No such folder, or no <c>driver.json</c> in it.</exception>
    public static DriverFolder Read(string folder)
    {
        if (!File.Exists(Path.Combine(folder, DriverLibrary.FileName)))
            throw NoDriver(folder);
        return new()
        {
            Folder = folder,
            DriverText = File.ReadAllText(Path.Combine(folder, DriverLibrary.FileName)),
            CommandLines = ReadOrNull(folder, CommandsName)?.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'),
            Readme = ReadOrNull(folder, ReadmeName),
            Sessions = ReadSessions(Path.Combine(folder, SessionsName)),
        };
    }

    /// <summary>The sessions, understood.</summary>
    /// <exception cref="BenchFaultException">A line that is none of a session's.</exception>
    internal IEnumerable<SessionFile> ParsedSessions() => Sessions.Select(session => SessionFile.Parse(session.Path, session.Lines));

    private static string? ReadOrNull(string folder, string name) =>
        File.Exists(Path.Combine(folder, name)) ? File.ReadAllText(Path.Combine(folder, name)) : null;

    private static (string, IReadOnlyList<string>)[] ReadSessions(string folder) => !Directory.Exists(folder)
        ? []
        : [.. Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal)
            .Select(file => (file, (IReadOnlyList<string>)File.ReadAllLines(file)))];

    private static BenchFaultException NoDriver(string folder) => new(
        BenchFault.BadFile, $"no {DriverLibrary.FileName} in {folder}", "a driver's folder",
        "Name the folder that holds driver.json, or make one with: autosweep driver new NAME");
}
