namespace AutoSweep.Bench.Tests.Support;

/// <summary>A folder of its own for a test, gone with it.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("autosweep-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        System.IO.File.WriteAllText(File(name), text);
        return File(name);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
