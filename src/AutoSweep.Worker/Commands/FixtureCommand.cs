using System.CommandLine;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep fixture</c>: calibrate the relay fixture, check its calibration.</summary>
public static class FixtureCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => new(
        "fixture", "Calibrates the relay fixture with a capacitance meter, and checks whether a calibration still holds.")
    {
        FixtureCalibrateCommand.Build(),
        FixtureCheckCommand.Build(),
    };

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
