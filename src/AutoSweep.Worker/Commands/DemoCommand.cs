using System.CommandLine;
using System.Globalization;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep demo</c>: the whole job on the simulated bench.</summary>
public static class DemoCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string?>("--job") { Description = "The job's folder. Left out: a new one under jobs/.", HelpName = "DIR" };
        var bench = new Option<string>("--sim-bench")
        {
            Description = "The simulated bench; docs/simulated-bench.md lists them.",
            HelpName = "NAME",
            DefaultValueFactory = _ => "demo",
        };
        var rate = ClockRate();
        var seed = new Option<int?>("--seed")
        {
            Description = "Seed of the simulated bench's noise. Left out: the bench's own.",
            HelpName = "N",
        };
        var command = new Command(
            "demo",
            "Needs no hardware: surveys and sweeps an invented generator on a simulated bench, hands-free, compares the result with the "
            + "simulator's truth, takes in a drawer of capacitors, matches and fits them, levels what is off the curve, surveys the generator once more and writes the record.")
        {
            job, bench, rate, seed,
        };
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(() => RunAsync(
            parsed.GetValue(job) ?? NewFolder(), parsed.GetValue(bench)!, parsed.GetValue(rate), parsed.GetValue(seed), cancellationToken)));
        return command;
    }

    private static Option<double> ClockRate()
    {
        var rate = new Option<double>("--clock-rate")
        {
            Description = "How many times faster than real the simulated bench runs.",
            HelpName = "N",
            DefaultValueFactory = _ => 120,
        };
        FlagRange.Require(rate, 1, 1000);
        return rate;
    }

    private static string NewFolder() =>
        Path.Combine("jobs", "demo-" + TimeProvider.System.GetLocalNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture));

    private static async Task<JobOutcome> RunAsync(string folder, string bench, double rate, int? seed, CancellationToken cancellationToken)
    {
        if (!AnsiConsole.Profile.Out.IsTerminal)
            AnsiConsole.Profile.Width = 120;
        await using var simulator = await SimulatedBench.StartAsync(bench, rate, seed, cancellationToken);
        var generator = GeneratorProfileLibrary.Open(simulator.Generator);
        var record = JobRecord.Begin(JobFolder.Open(folder), generator, Software.NameAndVersion, TimeProvider.System);
        var outcome = await HostedJob.RunAsync(
            record,
            new() { Wiring = simulator.Wiring, Stages = [JobStage.Survey, JobStage.Sweep], HandsFree = true, ClockRate = rate },
            cancellationToken);
        if (outcome.ExitCode != JobOutcome.Success)
            return outcome;
        if (simulator.Parts > 0)
        {
            await DemoParts.RunAsync(folder, simulator, rate, cancellationToken);
            outcome = await DemoParts.CheckAsync(folder, simulator, rate, cancellationToken);
        }

        if (simulator.Parts > 0 && outcome.ExitCode == JobOutcome.Success)
            outcome = await DemoLevels.LevelAsync(folder, simulator, rate, cancellationToken);
        if (simulator.Parts > 0 && outcome.ExitCode == JobOutcome.Success)
            outcome = await DemoLevels.SurveyAsLeftAsync(folder, simulator, rate, cancellationToken);

        if (outcome.ExitCode != JobOutcome.Success)
            return outcome;
        await JudgeAsync(bench, record.State, record.Folder, outcome, cancellationToken);
        DemoSummary.WriteFiles(AnsiConsole.Console, record.Folder);
        if (simulator.Parts > 0)
            await DemoReport.WriteAsync(folder);
        return outcome;
    }

    // Only now, with the job done, is the truth looked at, and by the simulator's own program.
    private static async Task JudgeAsync(
        string bench, JobState state, JobFolder files, JobOutcome outcome, CancellationToken cancellationToken)
    {
        var score = await SimulatedBench.ScoreAsync(bench, files, cancellationToken);
        DemoSummary.Write(AnsiConsole.Console, state, score);
        if (!score.Good)
            outcome.MissedTruth();
    }
}
