using System.CommandLine;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Service;

namespace AutoSweep.Worker.Commands;

/// <summary>The command line as a whole.</summary>
public static class RootCommandLine
{
    /// <summary>Understands the arguments and runs the command.</summary>
    /// <param name="arguments">The arguments as typed.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(string[] arguments)
    {
        var parsed = Build().Parse(arguments);
        var code = await parsed.InvokeAsync(new()
        {
            EnableDefaultExceptionHandler = false,
            // A service manager has its own signals and its own patience; the host attends to both.
            ProcessTerminationTimeout = ServiceManager.IsPresent ? null : new InvocationConfiguration().ProcessTerminationTimeout,
        });
        return parsed.Errors.Count > 0 ? JobOutcome.BadUsage : code;
    }

    private static RootCommand Build() => new(
        """
        Recaps tone-wheel generators: recognises the output that is clipped, finds the capacitance at which it is loudest, writes
        everything down. New here: "autosweep demo" shows the whole job without hardware.

        Exit codes:
        """ + "\n" + string.Join('\n', ExitCodes.All.Select(one => $"  {one.Code,2}  {one.Meaning}")))
    {
        DemoCommand.Build(),
        SurveyCommand.Build(),
        SweepCommand.Build(),
        StockCommand.Build(),
        MatchCommand.Build(),
        FitCommand.Build(),
        CheckCommand.Build(),
        LevelCommand.Build(),
        DiagnoseCommand.Build(),
        ReportCommand.Build(),
        ServeCommand.Build(),
        KeepCommand.Build(),
        FixtureCommand.Build(),
        InstrumentsCommand.Build(),
        DriverFolderCommand.Build(),
        CurveCommand.Build(),
        HistoryCommand.Build(),
    };
}
