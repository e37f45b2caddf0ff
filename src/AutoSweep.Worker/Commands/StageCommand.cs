using System.CommandLine;
using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Service;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>What the commands that read the bench have in common.</summary>
public static class StageCommand
{
    /// <summary>A command that works through stages of a job.</summary>
    /// <param name="name">What is typed.</param>
    /// <param name="help">What it does, for a technician.</param>
    /// <param name="cautions">What is shown before the work begins.</param>
    /// <param name="stages">The stages.</param>
    public static Command Build(string name, string help, IReadOnlyList<string> cautions, params JobStage[] stages) =>
        Build(name, help, cautions, stages.Length > 0, _ => stages);

    /// <summary>A command that works through stages which its own options choose.</summary>
    /// <param name="name">What is typed.</param>
    /// <param name="help">What it does, for a technician.</param>
    /// <param name="cautions">What is shown before the work begins.</param>
    /// <param name="clips">Whether outputs are clipped in it.</param>
    /// <param name="stages">Chooses the stages.</param>
    /// <param name="options">The command's own options.</param>
    public static Command Build(
        string name, string help, IReadOnlyList<string> cautions, bool clips, Func<ParseResult, IReadOnlyList<JobStage>> stages, params Option[] options)
    {
        var job = new JobFlags();
        var bench = new BenchFlags();
        var (handsFree, rate) = (HandsFree(), ClockRate());
        var command = new Command(name, help) { rate };
        foreach (var option in options)
            command.Add(option);
        if (clips)
            command.Add(handsFree);
        job.AddTo(command);
        bench.AddTo(command);
        command.SetAction((parsed, cancellationToken) => RunAsync(async () =>
        {
            var wiring = bench.Read(parsed);
            foreach (var caution in cautions)
                AnsiConsole.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"[yellow]{caution}[/]");
            return await HostedJob.RunAsync(
                job.Open(parsed),
                new() { Wiring = wiring, Stages = stages(parsed), HandsFree = parsed.GetValue(handsFree), ClockRate = parsed.GetValue(rate) },
                cancellationToken);
        }));
        return command;
    }

    /// <summary>The flag that recognises outputs by their tone.</summary>
    public static Option<bool> HandsFree() => new("--hands-free")
    {
        Description = "Recognise the clipped output by its tone, in any order, without a key. "
            + "Left out: asks for one output after the other.",
    };

    /// <summary>The flag of a simulated bench's clock.</summary>
    public static Option<double> ClockRate()
    {
        var rate = new Option<double>("--clock-rate")
        {
            Description = "For a simulated bench only: how many times faster than real its clock runs.",
            HelpName = "N",
            DefaultValueFactory = _ => 1,
        };
        FlagRange.Require(rate, 1, 1000);
        return rate;
    }

    /// <summary>Runs work and tells a fault as found, expected, what to do.</summary>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(Func<Task<JobOutcome>> work)
    {
        JobOutcome outcome;
        try
        {
            outcome = await work();
        }
        catch (BenchFaultException fault)
        {
            outcome = new();
            outcome.Failed(fault);
        }

        if (outcome.Fault is { } trouble && ServiceManager.IsSystemd)
            await Console.Error.WriteLineAsync(ServiceManager.FaultLine(trouble));
        else if (outcome.Fault is { } told)
            FaultText.Write(AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(Console.Error) }), told);
        return outcome.ExitCode;
    }
}
