using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Instruments.Meters.Sessions;
using AutoSweep.Worker.Bench;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep driver record</c>.</summary>
public static class DriverRecordCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var (named, drivers, live, rate) = (DriverFolderCommand.Named(), DriverFolderCommand.Drivers(), DriverFolderCommand.Live(required: true), StageCommand.ClockRate());
        var tone = DriverCheckCommand.Tone("The tone at the input in hertz; it chooses the bandwidth. Left out: 1000.");
        var capacitance = DriverFolderCommand.Capacitance("Record the capacitance function. Left out: the level, where the driver reads one.");
        var file = new Option<string>("--session")
        {
            Description = "The session's name. A session that is there already is not written over.",
            HelpName = "TEXT",
            DefaultValueFactory = _ => "recorded",
        };
        var command = new Command(
            "record", "Has the driver do everything once with a meter that is there, and keeps every word as a session that the check replays.")
        {
            named, drivers, live, tone, capacitance, file, rate,
        };
        command.SetAction((parsed, cancellationToken) => DriverFolderCommand.RunAsync(async outcome =>
        {
            var folder = DriverFolderCommand.FolderOf(parsed.GetValue(named)!, parsed.GetValue(drivers));
            var driver = MeterDriver.Read(Path.Combine(folder, DriverLibrary.FileName));
            var path = Free(Path.Combine(folder, DriverFolder.SessionsName, Path.GetFileName(parsed.GetValue(file)!) + ".txt"));
            var text = await RecordAsync(driver, parsed.GetValue(live)!, parsed.GetValue(capacitance), parsed.GetValue(tone) ?? 1000,
                parsed.GetValue(rate), cancellationToken);
            await KeepAsync(path, text, driver);
            outcome.Completed();
        }));
        return command;
    }

    private static async Task<string> RecordAsync(
        MeterDriver driver, string resource, bool capacitance, double tone, double rate, CancellationToken cancellationToken)
    {
        var options = RatedInstruments.Options(rate, RatedInstruments.Clock(rate), NullLoggerFactory.Instance);
        var link = await InstrumentBench.OpenLinkAsync(resource, driver, options, cancellationToken);
        return await DriverRecording.RecordAsync(
            driver, link, driver.Level is null || (capacitance && driver.Capacitance is not null), tone, options.Exchange, options.Time, cancellationToken);
    }

    // What was heard is kept in any case; it counts as a session only when it replays.
    private static async Task KeepAsync(string path, string text, MeterDriver driver)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        try
        {
            await SessionReplay.PlayAsync(SessionFile.Parse(path, text.Split('\n')), driver);
        }
        catch (BenchFaultException fault)
        {
            var aside = Path.ChangeExtension(path, ".not-replayed");
            await File.WriteAllTextAsync(aside, text);
            throw new BenchFaultException(fault.Kind, $"what was recorded does not replay: {fault.Found}", fault.Expected,
                $"It is kept as {aside}. Record again; where a word was lost or asked for twice, look at cable and terminators.", fault);
        }

        await File.WriteAllTextAsync(path, text);
        Console.WriteLine($"Recorded and replayed: {path}");
    }

    private static string Free(string path) => File.Exists(path)
        ? throw new BenchFaultException(BenchFault.BadFile, $"{path} is there already", "a name that is not taken", "Give --session another name.")
        : path;
}
