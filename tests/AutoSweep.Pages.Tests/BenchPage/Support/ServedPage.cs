using System.Diagnostics;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>The program with its page open, started as its users start it, on a data folder of its own.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private const string Ready = "The bench page: ";

    // A start takes two seconds here; a busy computer may take ten times as long.
    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(60);

    private Process _process;

    private ServedPage(Process process, string data, Uri address) => (_process, Data, Address) = (process, data, address);

    /// <summary>The data folder.</summary>
    public string Data { get; }

    /// <summary>Where the page is.</summary>
    public Uri Address { get; private set; }

    /// <summary>When the program said that it was ready, as a timestamp of the system's clock.</summary>
    public long ReadyAt { get; private set; }

    /// <summary>Processor time that the program has used.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Starts on a new data folder.</summary>
    public static Task<ServedPage> StartAsync(params IEnumerable<string> more) => StartAsync(Directory.CreateTempSubdirectory("autosweep-page-").FullName, more);

    /// <summary>Starts on a data folder.</summary>
    public static async Task<ServedPage> StartAsync(string data, IEnumerable<string> more)
    {
        var (process, address) = await LaunchAsync(data, 0, more);
        return new(process, data, address) { ReadyAt = TimeProvider.System.GetTimestamp() };
    }

    /// <summary>Kills the program as a power cut does, and starts it anew on the same port.</summary>
    public async Task KillAndRestartAsync(params IEnumerable<string> more)
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        (_process, Address) = await LaunchAsync(Data, Address.Port, more);
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(Data, recursive: true);
    }

    private static async Task<(Process Process, Uri Address)> LaunchAsync(string data, int port, IEnumerable<string> more)
    {
        var process = Programs.Start(Programs.Worker, ["serve", "--data", data, "--port", FormattableString.Invariant($"{port}"), .. more]);
        using var limit = new CancellationTokenSource(LongestStart, TimeProvider.System);
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            if (!line.StartsWith(Ready, StringComparison.Ordinal))
                continue;
            // What else it prints must go somewhere, or the pipe fills.
            _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
            _ = process.StandardError.ReadToEndAsync(CancellationToken.None);
            return (process, new(line[Ready.Length..].Trim()));
        }

        throw new InvalidOperationException("The page did not start: " + await process.StandardError.ReadToEndAsync(CancellationToken.None));
    }
}
