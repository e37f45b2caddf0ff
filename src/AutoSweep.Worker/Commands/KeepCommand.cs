using System.CommandLine;
using System.Globalization;
using AutoSweep.Worker.Bench;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep keep</c>: the host alone, with a connected bench and no page.</summary>
public static class KeepCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new JobFlags();
        var bench = new BenchFlags();
        var rate = StageCommand.ClockRate();
        var wait = new Option<bool>("--wait-for-bench")
        {
            Description = "Wait for an instrument that is not there yet. Left out: end with an exit code that says what is missing.",
        };
        var command = new Command(
            "keep", "Connects the bench of a job, keeps it connected and checked until Ctrl-C or a service manager ends it, and measures nothing.")
        {
            wait, rate,
        };
        job.AddTo(command);
        bench.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(() =>
        {
            var plan = new JobPlan
            {
                Wiring = bench.Read(parsed), Stages = [], HandsFree = false, ClockRate = parsed.GetValue(rate), WaitsForBench = parsed.GetValue(wait),
            };
            AnsiConsole.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"[yellow]{Cautions.SpinningGenerator}[/]");
            return HostedJob.RunAsync(job.OpenOrGoOn(parsed), plan, cancellationToken);
        }));
        return command;
    }
}
