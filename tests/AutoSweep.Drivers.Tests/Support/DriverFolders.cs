using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>The drivers that there are, for the suite that runs over all of them.</summary>
public static class DriverFolders
{
    public static TheoryData<string> Names => [.. DriverLibrary.BesideProgram.Names];

    public static TheoryData<string, string> Sessions
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var name in DriverLibrary.BesideProgram.Names)
                foreach (var (path, _) in Read(name).Sessions)
                    data.Add(name, Path.GetFileName(path));
            return data;
        }
    }

    public static DriverFolder Read(string driver) => DriverFolder.Read(DriverLibrary.BesideProgram.FolderOf(driver));

    public static SessionFile Session(string driver, string session) =>
        SessionFile.Read(Path.Combine(DriverLibrary.BesideProgram.FolderOf(driver), DriverFolder.SessionsName, session));

    public static string InRepository(string path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "AutoSweep.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("AutoSweep.sln stands in no folder above the tests.");
        return Path.Combine(folder.FullName, path);
    }
}
