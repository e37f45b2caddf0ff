namespace AutoSweep.Core.Tests.Support;

/// <summary>Files of the repository that a test compares with what the program makes.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(string name) => Path.Combine(Root, name);

    public static string Text(string name) => File.ReadAllText(PathOf(name));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "AutoSweep.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests must run inside the repository.");
        return folder.FullName;
    }
}
