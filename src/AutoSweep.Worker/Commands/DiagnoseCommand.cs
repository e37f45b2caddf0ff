using System.CommandLine;
using AutoSweep.Core.Diagnosis;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep diagnose</c>.</summary>
public static class DiagnoseCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string>("--job") { Description = "The job's folder, surveyed and better swept too.", HelpName = "DIR", Required = true };
        var stock = new StockFlags();
        var command = new Command(
            "diagnose",
            "Tells what is wrong, from what the job has read: dead pickups, miswired terminals, old capacitors, magnets, wheels, hum, speed, "
            + "loading; each with its evidence and how to make sure. Reads only; docs/diagnosis.md has the rules.")
        {
            job,
        };
        stock.AddTo(command);
        command.SetAction((parsed, _) => StageCommand.RunAsync(() =>
        {
            var state = JobReading.Read(parsed.GetValue(job)!).State;
            var old = OldCapacitors.Of(stock.Open(parsed).Read(), state);
            DiagnosisText.Write(PlainWidth.Console(), Diagnose.Of(state, old));
            var outcome = new JobOutcome();
            outcome.Completed();
            return Task.FromResult(outcome);
        }));
        return command;
    }
}
