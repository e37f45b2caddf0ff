using System.CommandLine;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep curve</c>: a job's level curves and the target that they are held to.</summary>
public static class CurveCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => new("curve", "A job's level curves as found, after recap and as left, and the target that they are held to.")
    {
        Show(),
        CurveFilesCommands.Import(),
        CurveFilesCommands.Export(),
        CurveEditCommand.Build(),
        Undo(),
    };

    /// <summary>A command that works on one job's curves.</summary>
    /// <param name="name">What is typed.</param>
    /// <param name="help">What it does.</param>
    /// <param name="run">The work; is told the job's folder.</param>
    /// <param name="symbols">Its own arguments and options.</param>
    internal static Command Build(string name, string help, Func<ParseResult, string, CancellationToken, Task> run, params Symbol[] symbols)
    {
        var job = new Option<string>("--job") { Description = "The job's folder.", HelpName = "DIR", Required = true };
        return Build(name, help, (parsed, cancellationToken) => run(parsed, parsed.GetValue(job)!, cancellationToken), [.. symbols, job]);
    }

    /// <summary>A command that ends well or with a fault.</summary>
    internal static Command Build(string name, string help, Func<ParseResult, CancellationToken, Task> run, params Symbol[] symbols)
    {
        var command = new Command(name, help);
        foreach (var symbol in symbols)
        {
            if (symbol is Argument argument)
                command.Add(argument);
            else
                command.Add((Option)symbol);
        }

        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(async () =>
        {
            await run(parsed, cancellationToken);
            var outcome = new JobOutcome();
            outcome.Completed();
            return outcome;
        }));
        return command;
    }

    /// <summary>Says which target is in force.</summary>
    internal static void Tell(TargetCurve target, string folder) => PlainWidth.Console().WriteLine(
        $"Target now: {target.Name} ({target.Source}), {target.Points.Count} outputs. autosweep curve undo --job {folder} takes the choice back.");

    private static Command Show()
    {
        var off = new Option<bool>("--only-off") { Description = "Only outputs that are off the target or off their neighbours." };
        return Build("show", "Shows the curves against the target: table, plot, sums. Needs no lock: the job may be running.", (parsed, folder, _) =>
        {
            new CurveText(JobReading.Read(folder).State).Write(PlainWidth.Console(), parsed.GetValue(off));
            return Task.CompletedTask;
        }, off);
    }

    private static Command Undo() => Build(
        "undo", "Takes the latest choice or edit of the target back; what was in force before is in force again.", (_, folder, _) =>
    {
        using var record = TargetChoice.Open(folder);
        var target = TargetChoice.TakeBack(record);
        PlainWidth.Console().WriteLine($"Taken back. Target now: {target.Name} ({target.Source}), {target.Points.Count} outputs.");
        return Task.CompletedTask;
    });
}
