using System.CommandLine;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep driver check</c>.</summary>
public static class DriverCheckCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var (named, drivers, live, rate) = (DriverFolderCommand.Named(), DriverFolderCommand.Drivers(), DriverFolderCommand.Live(required: false), StageCommand.ClockRate());
        var tone = Tone("With --live: the tone at the input in hertz. Left out: the frequency is not checked.");
        var capacitance = DriverFolderCommand.Capacitance("With --live: check the capacitance function. Left out: the level, where the driver reads one.");
        var command = new Command(
            "check", "Checks a driver's folder without hardware: schema, units, notation, every session line for line. With --live: a meter that is there.")
        {
            named, drivers, live, tone, capacitance, rate,
        };
        command.SetAction((parsed, cancellationToken) => DriverFolderCommand.RunAsync(outcome =>
        {
            var folder = DriverFolderCommand.FolderOf(parsed.GetValue(named)!, parsed.GetValue(drivers));
            return parsed.GetValue(live) is { } resource
                ? LiveAsync(folder, resource, parsed.GetValue(tone), parsed.GetValue(capacitance), parsed.GetValue(rate), outcome, cancellationToken)
                : DryAsync(folder, outcome);
        }));
        return command;
    }

    /// <summary>The tone at the meter's input.</summary>
    internal static Option<double?> Tone(string description)
    {
        var tone = new Option<double?>("--tone") { Description = description, HelpName = "HZ" };
        FlagRange.Require(tone, 1, 100000);
        return tone;
    }

    private static async Task DryAsync(string folder, JobOutcome outcome)
    {
        var items = await DriverFolderCheck.CheckAsync(DriverFolder.Read(folder));
        DriverCheckTable.Write(PlainWidth.Console(), items);
        var faults = items.Sum(item => item.Faults.Count);
        if (faults == 0)
            outcome.Completed();
        else
            outcome.DriverHasFaults();
    }

    private static async Task LiveAsync(
        string folder, string resource, double? tone, bool capacitance, double rate, JobOutcome outcome, CancellationToken cancellationToken)
    {
        var driver = MeterDriver.Read(Path.Combine(folder, DriverLibrary.FileName));
        var options = RatedInstruments.Options(rate, RatedInstruments.Clock(rate), NullLoggerFactory.Instance);
        await using var session = await InstrumentBench.OpenSessionAsync(resource, driver, options, cancellationToken);
        var rows = driver.Level is null || (capacitance && driver.Capacitance is not null)
            ? await LiveCapacitanceCheck.RunAsync(session, driver, options.Time, NullLogger.Instance, cancellationToken)
            : await LiveLevelCheck.RunAsync(session, driver, tone, options.Time, NullLogger.Instance, cancellationToken);
        DriverCheckTable.Write(PlainWidth.Console(), $"{driver.Name} at {resource}", rows);
        if (rows.All(row => row.Verdict != LiveVerdict.Short))
            outcome.Completed();
        else
            outcome.MeterIsOtherwise();
    }
}
