namespace AutoSweep.Sim.Tests.Support;

/// <summary>A folder that goes when the test ends.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("autosweep-sim-");

    public string PathOf(string name) => Path.Combine(folder.FullName, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
