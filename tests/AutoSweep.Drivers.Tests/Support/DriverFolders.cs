using AutoSweep.Instruments.Meters;

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
            {
                var sessions = Directory.EnumerateFiles(Path.Combine(FolderOf(name), "sessions"), "*.txt");
                foreach (var file in sessions.Order(StringComparer.Ordinal))
                    data.Add(name, Path.GetFileName(file));
            }

            return data;
        }
    }

    public static string FolderOf(string driver) => Path.Combine(DriverLibrary.BesideProgram.Folder, driver);

    public static string InRepository(string path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "AutoSweep.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("AutoSweep.sln stands in no folder above the tests.");
        return Path.Combine(folder.FullName, path);
    }
}
