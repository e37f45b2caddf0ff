namespace AutoSweep.Bench.Tests.Support;

/// <summary>The programs that docs/service.md says how to build, each built once by the command on that page. Gone with the last test.</summary>
/// <remarks>
/// Beside the page's command stands only what says where and how it is built, not what: a folder of its own for what the compiler writes, so that the
/// programs under test stay as they are; no analysis of the code a second time; no compiler left running, which would keep the output's pipe open.
/// </remarks>
public sealed class PublishedPrograms : IDisposable
{
    // A minute each on two busy cores, on a fresh machine with 100 MB of runtime to fetch.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    private readonly TemporaryFolder _folder = new();
    private readonly Dictionary<string, Task<string>> _built = [];

    /// <summary>What the page says to type, a line for each computer.</summary>
    internal static IReadOnlyList<string> Commands { get; } =
        [.. File.ReadLines(Programs.InRepository("docs/service.md")).Where(line => line.StartsWith("dotnet publish ", StringComparison.Ordinal))];

    /// <summary>The folder with the program for a computer.</summary>
    /// <param name="runtime">The .NET name of the computer, such as linux-arm64.</param>
    public Task<string> FolderAsync(string runtime) => _built.TryGetValue(runtime, out var built) ? built : _built[runtime] = BuildAsync(runtime);

    /// <inheritdoc/>
    public void Dispose() => _folder.Dispose();

    private async Task<string> BuildAsync(string runtime)
    {
        var folder = _folder.File(runtime);
        var words = Commands.Single(line => line.Contains($" -r {runtime} ", StringComparison.Ordinal)).Split(' ');
        Assert.Equal($"out/{runtime}", words[^1]);
        var run = await Run.EndAsync(Programs.StartSdk(Programs.InRepository(""), [.. words[1..^1], folder, "--artifacts-path", _folder.File("artifacts"), "-p:RunAnalyzers=false",
            "-p:UseSharedCompilation=false", "-nodeReuse:false"]), Patience);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        return folder;
    }
}
