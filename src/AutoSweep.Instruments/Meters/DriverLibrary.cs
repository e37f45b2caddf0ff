namespace AutoSweep.Instruments.Meters;

/// <summary>The meter drivers in a folder: each sub-folder with a <c>driver.json</c> is one.</summary>
/// <param name="Folder">The folder that holds the driver folders.</param>
public sealed record DriverLibrary(string Folder)
{
    /// <summary>The drivers that came with the program: the folder <c>drivers</c> beside it.</summary>
    public static DriverLibrary BesideProgram { get; } = new(Path.Combine(AppContext.BaseDirectory, "drivers"));
}
