using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Bench;

/// <summary>Where meter drivers are looked for: a folder that is named, the user's own, the program's.</summary>
public static class MeterDrivers
{
    /// <summary>The folder of the user's own drivers, in the data folder; need not be there.</summary>
    public static string Own { get; } = Path.Combine(DataFolder.Default, "drivers");

    /// <summary>All drivers. An earlier folder's hides one of the same name in a later: named, own, beside the program.</summary>
    /// <param name="named">A folder of driver folders, or none.</param>
    public static DriverLibrary Library(string? named) =>
        new([.. named is null ? Array.Empty<string>() : [named], Own, .. DriverLibrary.BesideProgram.Folders]);
}
