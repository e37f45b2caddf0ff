using AutoSweep.Core;

namespace AutoSweep.Instruments.Meters;

/// <summary>The meter drivers in one or several folders: each sub-folder with a <c>driver.json</c> is one.</summary>
/// <param name="Folders">The folders that hold the driver folders. A driver in an earlier one hides one of the same name in a later: so a
/// shop can keep its own figures for a family.</param>
public sealed record DriverLibrary(params IReadOnlyList<string> Folders)
{
    /// <summary>The file that makes a folder a driver's.</summary>
    public const string FileName = "driver.json";

    /// <summary>The drivers that came with the program: the folder <c>drivers</c> beside it.</summary>
    public static DriverLibrary BesideProgram { get; } = new(Path.Combine(AppContext.BaseDirectory, "drivers"));

    /// <summary>The names of the drivers there are, in order.</summary>
    public IReadOnlyList<string> Names => [.. Folders.SelectMany(NamesIn).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The folder of a driver.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="BenchFaultException">There is none of this name; lists those there are.</exception>
    public string FolderOf(string name) =>
        Folders.FirstOrDefault(folder => NamesIn(folder).Contains(name, StringComparer.Ordinal)) is { } folder
            ? Path.Combine(folder, name)
            : throw Unknown(name);

    /// <summary>Reads a driver.</summary>
    /// <param name="name">The name of its folder.</param>
    /// <exception cref="BenchFaultException">There is none of this name (lists those there are), or its file is not in the
    /// format.</exception>
    public MeterDriver Read(string name) => MeterDriver.Read(Path.Combine(FolderOf(name), FileName));

    private static IEnumerable<string> NamesIn(string folder) => !Directory.Exists(folder)
        ? []
        : Directory.EnumerateDirectories(folder)
            .Where(driver => File.Exists(Path.Combine(driver, FileName)))
            .Select(driver => Path.GetFileName(driver));

    private BenchFaultException Unknown(string name) => new(
        BenchFault.BadFile,
        $"no meter driver \"{name}\" in {string.Join(" or ", Folders)}",
        Names.Count == 0 ? "a folder of drivers beside the program" : $"one of: {string.Join(", ", Names)}",
        "Choose the driver of your meter's family; scpi-dmm serves most SCPI multimeters.");
}
