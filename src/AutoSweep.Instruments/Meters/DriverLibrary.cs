using AutoSweep.Core;

namespace AutoSweep.Instruments.Meters;

/// <summary>The meter drivers in a folder: each sub-folder with a <c>driver.json</c> is one.</summary>
/// <param name="Folder">The folder that holds the driver folders.</param>
public sealed record DriverLibrary(string Folder)
{
    private const string FileName = "driver.json";

    /// <summary>The drivers that came with the program: the folder <c>drivers</c> beside it.</summary>
    public static DriverLibrary BesideProgram { get; } = new(Path.Combine(AppContext.BaseDirectory, "drivers"));

    /// <summary>The names of the drivers there are, in order.</summary>
    public IReadOnlyList<string> Names => !Directory.Exists(Folder)
        ? []
        : [.. Directory.EnumerateDirectories(Folder)
            .Where(folder => File.Exists(Path.Combine(folder, FileName)))
            .Select(folder => Path.GetFileName(folder))
            .Order(StringComparer.Ordinal)];

    /// <summary>Reads a driver.</summary>
    /// <param name="name">The name of its folder.</param>
    /// <exception cref="BenchFaultException">There is none of this name (lists those there are), or its file is not in the
    /// format.</exception>
    public MeterDriver Read(string name)
    {
        if (!Names.Contains(name, StringComparer.Ordinal))
            throw Unknown(name);
        return MeterDriver.Read(Path.Combine(Folder, name, FileName));
    }

    private BenchFaultException Unknown(string name) => new(
        BenchFault.BadFile,
        $"no meter driver \"{name}\" in {Folder}",
        Names.Count == 0 ? "a folder of drivers beside the program" : $"one of: {string.Join(", ", Names)}",
        "Choose the driver of your meter's family; scpi-dmm serves most SCPI multimeters.");
}
