using System.CommandLine;
using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep level</c>: the outputs that are still off the curve, at their magnets.</summary>
public static class LevelCommand
{
    private const string Word = "understood";

    /// <summary>The command.</summary>
    public static Command Build()
    {
        var (job, bench, flags) = (new JobFlags(), new BenchFlags(), new LevellingFlags());
        var (handsFree, rate) = (StageCommand.HandsFree(), StageCommand.ClockRate());
        var command = new Command(
            "level",
            "After the recap: guides the outputs that are still off the target curve into its band at their magnets, most gain for least "
            + "handling first. Says in or out and how far, learns what a millimetre does to each, never further in than the gap that is known to be there.")
        {
            rate, handsFree,
        };
        flags.AddTo(command);
        job.AddTo(command);
        bench.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(async () =>
        {
            var (wiring, options) = (bench.Read(parsed), flags.Read(parsed));
            var record = job.Open(parsed);
            if (flags.IsUndo(parsed))
                return TakeBack(record);
            try
            {
                Announce(LevellingPlan.Of(record.State, options));
                options = options with { Acknowledged = flags.Acknowledged(parsed) ?? await AskAsync(cancellationToken) };
            }
            catch
            {
                record.Dispose();
                throw;
            }

            if (options.Acknowledged is null)
            {
                record.Dispose();
                return new JobOutcome();
            }

            return await HostedJob.RunAsync(
                record,
                new() { Wiring = wiring, Stages = [JobStage.Level], HandsFree = parsed.GetValue(handsFree), ClockRate = parsed.GetValue(rate),
                    Levelling = options },
                cancellationToken);
        }));
        return command;
    }

    private static void Announce(MagnetWorkOrder order)
    {
        foreach (var work in order.Works)
            Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"  output {work.Output,3}  {Math.Abs(work.Decibels),4:0.0} dB too {(work.Decibels > 0 ? "loud" : "soft")}, some {work.ExpectedMoves:0} moves"));
        foreach (var left in order.LeftOut)
            Console.Out.WriteLine($"  output {left.Output,3}  not at its magnet: {left.Reason}");
        Console.Out.WriteLine(order.Works.Count == 0 ? "No magnet needs to be touched." : $"{order.Works.Count} magnets to go to.");
    }

    private static async Task<string?> AskAsync(CancellationToken cancellationToken)
    {
        foreach (var caution in new[] { Cautions.SpinningGenerator, Cautions.Magnets })
            AnsiConsole.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"[yellow]{caution}[/]");
        var typed = await ConsoleLines.AskAsync($"Type \"{Word}\" to go on; anything else stops:", cancellationToken);
        return string.Equals(typed?.Trim(), Word, StringComparison.OrdinalIgnoreCase) ? $"typed \"{Word}\"" : null;
    }

    private static JobOutcome TakeBack(JobRecord record)
    {
        using var job = record;
        var outcome = new JobOutcome();
        outcome.Completed();
        Console.Out.WriteLine(LevellingUndo.TakeBack(record) is { } output
            ? $"Taken back: the last entry of output {output} at its magnet. The rod stands where it stands: its next reading tells."
            : "Nothing was done at the magnets: nothing to take back.");
        return outcome;
    }
}
