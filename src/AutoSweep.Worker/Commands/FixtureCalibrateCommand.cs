using System.CommandLine;
using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Calibration;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep fixture calibrate</c>.</summary>
public static class FixtureCalibrateCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var flags = new FixtureFlags();
        var file = new Option<string>("--out")
        {
            Description = "The calibration file to write; replaced when it is there.",
            HelpName = "FILE",
            Required = true,
        };
        var command = new Command(
            "calibrate",
            "Closes the relays one by one, in decades and in random combinations, reads each with the capacitance meter at the fixture's "
            + "clips, solves for every relay and the stray with their uncertainties, names relays that stick, leak or come and go, "
            + "and writes the calibration file.");
        flags.AddTo(command);
        command.Add(file);
        command.SetAction((parsed, cancellationToken) => FixtureCommand.RunAsync(outcome =>
            RunAsync(flags.Read(parsed), parsed.GetValue(file)!, outcome, cancellationToken)));
        return command;
    }

    private static async Task RunAsync(FixtureBenchPlan plan, string path, JobOutcome outcome, CancellationToken cancellationToken)
    {
        await using var bench = await FixtureBench.OpenAsync(plan, cancellationToken);
        var options = bench.IsTyped ? CalibrationPlanOptions.ByHand : new CalibrationPlanOptions();
        var readings = await RelaySetProgress.ReadAsync(
            bench, CalibrationPlan.Sets(bench.Box.RelayCount, options), options.Repeats, cancellationToken);
        var solution = CalibrationSolver.Solve(
            readings.SelectMany(set => set), bench.Box.RelayCount, bench.Accuracy,
            new() { NominalPicofarads = CalibrationSolverOptions.UsualBox(bench.Box.RelayCount) });
        ConsoleWidth.WideWhenPiped();
        CalibrationTable.Write(AnsiConsole.Console, solution);
        var temperature = await bench.ReadTemperatureAsync(cancellationToken);
        var today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        FixtureCalibrationFile.Write(path, CalibratedFixture.Of(solution, bench.Box.Serial, bench.MeterName, temperature, today));
        AnsiConsole.WriteLine($"Fixture {bench.Box.Serial} is calibrated: {path}");
        outcome.Completed();
    }
}
