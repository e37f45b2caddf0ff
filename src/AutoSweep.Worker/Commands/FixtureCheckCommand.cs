using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Calibration;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep fixture check</c>.</summary>
public static class FixtureCheckCommand
{
    // For a file without uncertainties: a bench meter's 0.05 % and a picofarad (common practice).
    private const double UnknownShare = 0.0005;
    private const double UnknownPicofarads = 1;

    private const int Repeats = 3;

    /// <summary>The command.</summary>
    public static Command Build()
    {
        var flags = new FixtureFlags();
        var file = new Option<string?>("--calibration")
        {
            Description = "The calibration file. Left out: the one that bench.json names.",
            HelpName = "FILE",
        };
        var command = new Command(
            "check", "Reads a few combinations of relays with the capacitance meter and says whether the calibration still holds.");
        flags.AddTo(command);
        command.Add(file);
        command.SetAction((parsed, cancellationToken) => FixtureCommand.RunAsync(outcome =>
        {
            var plan = flags.Read(parsed);
            return RunAsync(plan, parsed.GetValue(file) ?? plan.Wiring.Calibration ?? throw NoCalibration(), outcome, cancellationToken);
        }));
        return command;
    }

    private static async Task RunAsync(FixtureBenchPlan plan, string path, JobOutcome outcome, CancellationToken cancellationToken)
    {
        var calibration = FixtureCalibration.Read(path);
        await using var bench = await FixtureBench.OpenAsync(plan, cancellationToken);
        if (bench.Box.Serial != calibration.FixtureSerial || bench.Box.RelayCount != calibration.RelaysPicofarads.Count)
            throw OtherFixture(bench.Box, calibration);
        var check = CheckOf(calibration, bench.Accuracy);
        var sets = await RelaySetProgress.ReadAsync(
            bench, CalibrationCheck.Sets(bench.Box.RelayCount), bench.IsTyped ? 1 : Repeats, cancellationToken);
        CheckedPoint[] points = [.. sets.Select(set => check.Compare(set[0].Closed, [.. set.Select(reading => reading.Picofarads)]))];
        ConsoleWidth.WideWhenPiped();
        CalibrationTable.Write(AnsiConsole.Console, points);
        AnsiConsole.WriteLine(CheckWords.Of(points));
        if (points.All(point => point.Holds))
            outcome.Completed();
        else
            outcome.CalibrationIsOff();
    }

    private static CalibrationCheck CheckOf(FixtureCalibration calibration, MeterAccuracy meter) => new(
        calibration.StrayPicofarads,
        calibration.StrayStandardUncertaintyPicofarads ?? UnknownPicofarads,
        calibration.RelaysPicofarads,
        calibration.RelayStandardUncertaintiesPicofarads ?? [.. calibration.RelaysPicofarads.Select(relay => UnknownShare * relay)],
        meter);

    private static BenchFaultException OtherFixture(IRelayBox box, FixtureCalibration calibration) => new(
        BenchFault.WrongCalibration,
        FormattableString.Invariant($"the fixture has the serial number {box.Serial} and {box.RelayCount} relays"),
        FormattableString.Invariant(
            $"the serial number {calibration.FixtureSerial} and {calibration.RelaysPicofarads.Count} relays, as the file has them"),
        $"give the calibration file of fixture {box.Serial}, or connect fixture {calibration.FixtureSerial}");

    private static BenchFaultException NoCalibration() => new(
        BenchFault.BadFile, "no calibration file was named", "the file to check", "give --calibration, or name it in bench.json");
}
