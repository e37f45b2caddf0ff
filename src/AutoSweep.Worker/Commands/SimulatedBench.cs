using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Commands;

/// <summary>The simulator, a program of its own, started for the demo. All that is known of it is what it prints and what is on its wires.</summary>
public sealed class SimulatedBench : IAsyncDisposable
{
    private readonly Process _process;

    private SimulatedBench(Process process, ReadyLine ready) => (_process, Generator, Wiring) = (process, ready.Generator, ready.Wiring);

    /// <summary>The generator's profile file.</summary>
    public string Generator { get; }

    /// <summary>How the simulated bench is wired.</summary>
    public BenchWiring Wiring { get; }

    /// <summary>Starts the simulator and waits until its instruments answer.</summary>
    /// <exception cref="BenchFaultException">The simulator is not beside the program, or did not start.</exception>
    public static async Task<SimulatedBench> StartAsync(string bench, double rate, int? seed, CancellationToken cancellationToken)
    {
        List<string> arguments = ["serve", "--bench", bench, "--clock-rate", rate.ToString(CultureInfo.InvariantCulture)];
        if (seed is { } number)
            arguments.AddRange(["--seed", number.ToString(CultureInfo.InvariantCulture)]);
        var process = Start(arguments);
        try
        {
            var line = await process.StandardOutput.ReadLineAsync(cancellationToken);
            return new(process, ReadyLine.Parse(line ?? throw await NotStartedAsync(process)));
        }
        catch
        {
            await StopAsync(process);
            throw;
        }
    }

    /// <summary>Lets the simulator's own program compare a finished job with the truth.</summary>
    public static async Task<DemoScore> ScoreAsync(string bench, JobFolder files, CancellationToken cancellationToken)
    {
        using var process = Start(["score", "--bench", bench, "--sweeps", files.Sweeps, "--survey", files.Survey, "--json"]);
        var text = await process.StandardOutput.ReadToEndAsync(cancellationToken);
        await process.WaitForExitAsync(cancellationToken);
        return text.Length > 0
            ? DemoScore.Parse(text)
            : throw new BenchFaultException(BenchFault.BadFile, "the simulator could not compare the job: " + (await process.StandardError.ReadToEndAsync(cancellationToken)).Trim(), "the job's result files and the bench file", "see the job folder; the results themselves are kept");
    }

    /// <summary>Ends the simulator: it goes when its standard input closes.</summary>
    public async ValueTask DisposeAsync() => await StopAsync(_process);

    private static Process Start(List<string> arguments)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "sim", "autosweep-sim.dll");
        if (!File.Exists(program))
            throw new BenchFaultException(BenchFault.NotReachable, $"no simulator at {program}", "the simulator beside the program", "build the whole solution: dotnet build -c Release");
        var start = new ProcessStartInfo(DotnetHost(), ["exec", program, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var process = Process.Start(start)!;
        // Its complaints are read away so that a full pipe never stalls it; they are shown when it does not start.
        return process;
    }

    // The runtime that runs this program runs the simulator too: <root>/shared/Microsoft.NETCore.App/<version>/ and <root>/dotnet.
    private static string DotnetHost()
    {
        var root = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
        return Path.Combine(root, OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet");
    }

    private static async Task<BenchFaultException> NotStartedAsync(Process process) => new(
        BenchFault.NotReachable, "the simulator ended at once: " + (await process.StandardError.ReadToEndAsync()).Trim(), "a running simulator", "see docs/simulated-bench.md");

    private static async Task StopAsync(Process process)
    {
        process.StandardInput.Close();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5), TimeProvider.System);
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
        }

        process.Dispose();
    }

    private sealed record ReadyLine(string Meter, string Fixture, string Calibration, string Generator, double ClockRate, double AmplifierGain)
    {
        public BenchWiring Wiring => new() { Meter = Meter, Fixture = Fixture, Calibration = Calibration, AmplifierGain = AmplifierGain };

        public static ReadyLine Parse(string line) => JsonSerializer.Deserialize<ReadyLine>(line, JsonSerializerOptions.Web)!;
    }
}
