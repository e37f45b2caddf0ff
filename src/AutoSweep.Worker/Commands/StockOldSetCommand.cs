using System.CommandLine;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock old-set</c>: the capacitors that came off, read one after the other.</summary>
public static class StockOldSetCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var bench = new PartsFlags();
        var job = new Option<string>("--job") { Description = "The job's folder.", HelpName = "DIR", Required = true };
        var nominal = new Option<Capacitance?>("--nominal") { Description = "The value printed on them all.", HelpName = "VALUE", CustomParser = CapacitanceOption.Parse };
        var year = StockOldCommand.Year();
        var command = StockCommand.Build("old-set",
            "Reads the capacitors that came off, output by output, at the capacitance meter's clips or typed; those that are written down are not asked for again.",
            async (parsed, ledger, cancellationToken) =>
        {
            // Without the job's lock: this must not stop a running sweep.
            var state = JobReading.Read(parsed.GetValue(job)!).State;
            AnsiConsole.WriteLine(Cautions.OldCapacitors);
            var words = new OldSetWords();
            var lines = new OldSetLines(words);
            await using var open = await bench.OpenAsync(parsed, cancellationToken, lines.Take);
            Console.Out.WriteLine($"{open.Instruction}\n{OldSetLines.Known}");
            var reading = new OldSetReading(
                open.Parts, ledger, StockJob.NameOf(state), [.. state.Profile!.FilteredOutputs.Select(output => output.Number)],
                new(parsed.GetValue(nominal)?.Picofarads, parsed.GetValue(year)), words, Console.Out, TimeProvider.System);
            var count = open.Parts.Meter is null
                ? await reading.RunAsync(cancellationToken)
                : await BesideAsync(lines, reading, cancellationToken);
            Console.Out.WriteLine($"{count} old capacitors written down in {ledger.Path}. Take one back with: autosweep stock undo");
        });
        bench.AddTo(command);
        foreach (var option in new Option[] { job, nominal, year })
            command.Add(option);
        return command;
    }

    private static async Task<int> BesideAsync(OldSetLines lines, OldSetReading reading, CancellationToken cancellationToken)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var listening = lines.ListenAsync(Console.In, Console.Out, end.Token);
        try
        {
            return await reading.RunAsync(cancellationToken);
        }
        finally
        {
            await end.CancelAsync();
            await listening.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
