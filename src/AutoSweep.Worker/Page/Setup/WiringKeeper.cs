using AutoSweep.Core;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>Keeps bench.json: a new one counts only after it was read back as strictly as a file that somebody wrote, and the one before can be
/// had back.</summary>
/// <param name="path">bench.json.</param>
public sealed class WiringKeeper(string path)
{
    /// <summary>The wiring of before.</summary>
    public string Before => Beside("before");

    private string Trial => Beside("trial");

    /// <summary>Whether there is a wiring to go back to.</summary>
    public bool CanGoBack => File.Exists(Before);

    /// <summary>Puts a wiring in the place of the one that counts.</summary>
    /// <param name="wiring">The wiring; its paths may be absolute.</param>
    /// <exception cref="BenchFaultException">It cannot be read back, names a driver that is not there, or the folder cannot be written.</exception>
    public void Keep(BenchWiring wiring)
    {
        try
        {
            BenchWiringFile.Write(Trial, wiring with { Calibration = Relative(wiring.Calibration), Drivers = Relative(wiring.Drivers) });
            Check(BenchWiringFile.Read(Trial));
            Guarded(() =>
            {
                if (File.Exists(path))
                    File.Copy(path, Before, overwrite: true);
                File.Move(Trial, path, overwrite: true);
            });
        }
        finally
        {
            File.Delete(Trial);
        }
    }

    /// <summary>Goes back to the wiring of before; doing it again comes back to this one.</summary>
    /// <exception cref="BenchFaultException">There is none, or it cannot be used.</exception>
    public void GoBack()
    {
        if (!CanGoBack)
            throw new BenchFaultException(BenchFault.BadFile, "no wiring from before", "one that was kept", "type the wiring anew");
        _ = BenchWiringFile.Read(Before);
        Guarded(() =>
        {
            if (File.Exists(path))
                File.Copy(path, Trial, overwrite: true);
            File.Move(Before, path, overwrite: true);
            if (File.Exists(Trial))
                File.Move(Trial, Before);
        });
    }

    // What would only be noticed when the work begins.
    private static void Check(BenchWiring wiring)
    {
        var drivers = MeterDrivers.Library(wiring.Drivers);
        _ = drivers.Read(wiring.MeterDriver);
        _ = drivers.Read(wiring.CapacitanceMeterDriver);
        if (wiring.Calibration is { } file)
            _ = Instruments.Fixture.FixtureCalibration.Read(file);
    }

    private string? Relative(string? file) => file is null ? null : Path.GetRelativePath(Folder, Path.GetFullPath(file, Folder));

    private string Folder => Path.GetDirectoryName(Path.GetFullPath(path))!;

    private string Beside(string which) => Path.Combine(Folder, $"{Path.GetFileNameWithoutExtension(path)}-{which}.json");

    private void Guarded(Action change)
    {
        try
        {
            change();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"{path} cannot be written ({fault.Message})", "a folder that this user may write",
                "mend the permissions or the disk", fault);
        }
    }
}
