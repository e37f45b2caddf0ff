using System.CommandLine;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep driver</c>: make, check and record a meter driver.</summary>
public static class DriverFolderCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => new(
        "driver", "Makes, checks and records meter drivers: one folder a family of meters, found without a list.")
    {
        DriverNewCommand.Build(),
        DriverCheckCommand.Build(),
        DriverRecordCommand.Build(),
    };

    /// <summary>The driver that is meant.</summary>
    internal static Argument<string> Named() => new("NAME")
    {
        Description = "A driver's name, or its folder.",
    };

    /// <summary>Where further drivers are.</summary>
    internal static Option<string?> Drivers() => new("--drivers")
    {
        Description = $"A folder of further meter drivers. Always looked into: {MeterDrivers.Own} and the drivers that came with the program.",
        HelpName = "DIR",
    };

    /// <summary>The real meter.</summary>
    internal static Option<string?> Live(bool required) => new("--live")
    {
        Description = "The meter: a VISA resource name such as TCPIP::192.0.2.10::5025::SOCKET or ASRL/dev/ttyUSB0::INSTR.",
        HelpName = "RESOURCE",
        Required = required,
    };

    /// <summary>Which of two functions.</summary>
    internal static Option<bool> Capacitance(string description) => new("--capacitance") { Description = description };

    /// <summary>The folder that a name or a path means.</summary>
    /// <exception cref="Core.BenchFaultException">There is no such driver.</exception>
    internal static string FolderOf(string named, string? drivers) =>
        File.Exists(Path.Combine(named, DriverLibrary.FileName)) || Path.GetFileName(named) != named || named is "." or ".."
            ? named
            : MeterDrivers.Library(drivers).FolderOf(named);

    /// <summary>Runs such a command to its end, a fault, or Ctrl-C.</summary>
    internal static Task<int> RunAsync(Func<JobOutcome, Task> work) => StageCommand.RunAsync(async () =>
    {
        var outcome = new JobOutcome();
        try
        {
            await work(outcome);
        }
        catch (OperationCanceledException)
        {
            outcome.Stopped();
        }

        return outcome;
    });
}
