using System.Diagnostics;
using System.Runtime.InteropServices;
using AutoSweep.Core;

namespace AutoSweep.Worker.Commands;

/// <summary>The simulator's program while it runs. It goes when its standard input closes.</summary>
public sealed class SimulatorProcess : IAsyncDisposable
{
    // It has sockets and a pty to close, nothing that takes long (measured: well under a second).
    private static readonly TimeSpan LongestGoodbye = TimeSpan.FromSeconds(5);

    private readonly Process _process;

    // Complaints are read away from the start: a full pipe would stall the simulator.
    private SimulatorProcess(Process process) => (_process, Complaints) = (process, process.StandardError.ReadToEndAsync());

    /// <summary>What it prints.</summary>
    public StreamReader Output => _process.StandardOutput;

    /// <summary>What it complains about, complete when it has ended.</summary>
    public Task<string> Complaints { get; }

    /// <summary>Starts it, beside this program.</summary>
    /// <exception cref="BenchFaultException">It is not there.</exception>
    public static SimulatorProcess Start(IEnumerable<string> arguments)
    {
        var command = Command(arguments).ToList();
        return new(Process.Start(new ProcessStartInfo(command[0], command[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!);
    }

    // A build lays it as an assembly that the same runtime runs; a single file, published, brings its own runtime.
    private static IEnumerable<string> Command(IEnumerable<string> arguments)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "sim");
        var assembly = Path.Combine(folder, "autosweep-sim.dll");
        var single = Path.Combine(folder, OperatingSystem.IsWindows() ? "autosweep-sim.exe" : "autosweep-sim");
        return File.Exists(assembly) ? [DotnetHost(), "exec", assembly, .. arguments]
            : File.Exists(single) ? [single, .. arguments]
            : throw new BenchFaultException(
                BenchFault.NotReachable,
                $"no simulator in {folder}",
                "the simulator beside the program",
                "build the whole solution, dotnet build -c Release, or publish the program again as docs/service.md says");
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _process.StandardInput.Close();
        using var patience = new CancellationTokenSource(LongestGoodbye, TimeProvider.System);
        try
        {
            await _process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            _process.Kill(entireProcessTree: true);
        }

        _process.Dispose();
    }

    // The runtime that runs this program runs the simulator too: <root>/shared/Microsoft.NETCore.App/<version>/ and <root>/dotnet.
    private static string DotnetHost()
    {
        var root = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
        return Path.Combine(root, OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet");
    }
}
