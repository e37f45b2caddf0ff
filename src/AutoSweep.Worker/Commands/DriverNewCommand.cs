using System.CommandLine;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep driver new</c>.</summary>
public static class DriverNewCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var name = new Argument<string>("NAME") { Description = "The driver's name: lower case letters, digits and hyphens, such as acme-m7." };
        var into = new Option<string?>("--in")
        {
            Description = $"The folder of drivers that the new one goes into. Left out: drivers/ here, where there is one; else {MeterDrivers.Own}.",
            HelpName = "DIR",
        };
        var capacitance = DriverFolderCommand.Capacitance("The meter measures capacitance. Left out: level and frequency.");
        var command = new Command("new", "Makes a driver's folder, with what only the manual can fill left empty.") { name, into, capacitance };
        command.SetAction((parsed, _) => DriverFolderCommand.RunAsync(outcome =>
        {
            var parent = parsed.GetValue(into) ?? (Directory.Exists("drivers") ? "drivers" : MeterDrivers.Own);
            var folder = DriverTemplate.Make(parent, parsed.GetValue(name)!, parsed.GetValue(capacitance));
            Console.WriteLine($"""
                Made {folder}

                1. driver.json: fill it from the manual; an editor that knows JSON schema completes it.
                2. commands.txt: the headers as the manual prints them.
                3. sessions/: a conversation as the manual prints it, or recorded.
                4. README.md: what a real unit has confirmed, and what not.
                Then, and as often as you like: autosweep driver check {folder}
                """);
            outcome.Completed();
            return Task.CompletedTask;
        }));
        return command;
    }
}
