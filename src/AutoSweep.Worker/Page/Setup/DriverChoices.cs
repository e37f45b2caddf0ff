using AutoSweep.Core;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>The drivers that can be chosen for a meter.</summary>
/// <param name="Level">Those that read a level.</param>
/// <param name="Capacitance">Those that measure capacitance.</param>
public sealed record DriverChoices(IReadOnlyList<string> Level, IReadOnlyList<string> Capacitance)
{
    /// <summary>The choices that a library has; a driver whose file is broken is none.</summary>
    public static DriverChoices Of(DriverLibrary library)
    {
        MeterDriver[] drivers = [.. library.Names.Select(name => Known(library, name)).OfType<MeterDriver>()];
        return new([.. drivers.Where(driver => driver.Level is not null).Select(driver => driver.Name)],
            [.. drivers.Where(driver => driver.Capacitance is not null).Select(driver => driver.Name)]);
    }

    /// <summary>Of the drivers that fit an identity the first that reads a level; none where none does.</summary>
    public string? ForLevel(IEnumerable<string> fitting) => fitting.FirstOrDefault(Level.Contains);

    /// <summary>Of the drivers that fit an identity the first that measures capacitance; none where none does.</summary>
    public string? ForCapacitance(IEnumerable<string> fitting) => fitting.FirstOrDefault(Capacitance.Contains);

    private static MeterDriver? Known(DriverLibrary library, string name)
    {
        try
        {
            return library.Read(name);
        }
        catch (BenchFaultException)
        {
            return null;
        }
    }
}
