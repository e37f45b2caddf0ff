using System.Globalization;
using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Commands;

/// <summary>The simulator, a program of its own, started for the demo.</summary>
/// <remarks>All that is known of it is what it prints and what is on its wires.</remarks>
public sealed class SimulatedBench : IAsyncDisposable
{
    private readonly SimulatorProcess _process;

    private SimulatedBench(SimulatorProcess process, ReadyLine ready) =>
        (_process, Generator, Wiring, Parts) = (process, ready.Generator, ready.Wiring, ready.Parts);

    /// <summary>The generator's profile file.</summary>
    public string Generator { get; }

    /// <summary>How the simulated bench is wired.</summary>
    public BenchWiring Wiring { get; }

    /// <summary>How many parts lie in its drawer.</summary>
    public int Parts { get; }

    /// <summary>Starts the simulator and waits until its instruments answer.</summary>
    /// <exception cref="BenchFaultException">The simulator is not beside the program, or did not start.</exception>
    public static async Task<SimulatedBench> StartAsync(string bench, double rate, int? seed, CancellationToken cancellationToken)
    {
        List<string> arguments = ["serve", "--bench", bench, "--hands", "survey,sweep,parts,fit,check,level,asLeft", "--clock-rate", rate.ToString(CultureInfo.InvariantCulture)];
        if (seed is { } number)
            arguments.AddRange(["--seed", number.ToString(CultureInfo.InvariantCulture)]);
        var process = SimulatorProcess.Start(arguments);
        try
        {
            var line = await process.Output.ReadLineAsync(cancellationToken);
            return new(process, ReadyLine.Parse(line ?? throw NotStarted(await process.Complaints)));
        }
        catch
        {
            await process.DisposeAsync();
            throw;
        }
    }

    /// <summary>Lets the simulator's own program compare a finished job with the truth.</summary>
    public static async Task<DemoScore> ScoreAsync(string bench, JobFolder files, CancellationToken cancellationToken)
    {
        await using var process = SimulatorProcess.Start(
            ["score", "--bench", bench, "--sweeps", files.Sweeps, "--survey", files.Survey, "--json"]);
        var text = await process.Output.ReadToEndAsync(cancellationToken);
        return text.Length > 0 ? DemoScore.Parse(text) : throw NotCompared(await process.Complaints);
    }

    /// <summary>Ends the simulator.</summary>
    public ValueTask DisposeAsync() => _process.DisposeAsync();

    private static BenchFaultException NotStarted(string complaints) => new(
        BenchFault.NotReachable, $"the simulator ended at once: {complaints.Trim()}", "a running simulator", "see docs/simulated-bench.md");

    private static BenchFaultException NotCompared(string complaints) => new(
        BenchFault.BadFile,
        $"the simulator could not compare the job: {complaints.Trim()}",
        "the job's result files and the bench file",
        "see the job folder; the results themselves are kept");

    private sealed record ReadyLine(
        string Meter, string Fixture, string CapacitanceMeter, string Calibration, string Generator, double AmplifierGain, int Parts)
    {
        public BenchWiring Wiring => new()
        {
            Meter = Meter, Fixture = Fixture, CapacitanceMeter = CapacitanceMeter, Calibration = Calibration, AmplifierGain = AmplifierGain,
        };

        public static ReadyLine Parse(string line) => JsonSerializer.Deserialize<ReadyLine>(line, JsonSerializerOptions.Web)!;
    }
}
