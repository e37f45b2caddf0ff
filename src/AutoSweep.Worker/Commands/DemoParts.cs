using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>The demo's second half: a drawer of parts is taken in, matched to the whole generator, measured and fitted.</summary>
public static class DemoParts
{
    // The bags of the invented drawer: printed values of 5 to 10 % parts.
    private static readonly IntakeLabel Label = new(null, null, "polypropylene", 400);

    /// <summary>Goes on with a swept job to its last fitted part.</summary>
    /// <param name="folder">The job's folder; its stock gets a ledger of its own in it.</param>
    /// <param name="simulator">The simulated bench.</param>
    /// <param name="rate">How much faster than real it runs.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public static async Task RunAsync(string folder, SimulatedBench simulator, double rate, CancellationToken cancellationToken)
    {
        using var record = JobRecord.Resume(JobFolder.Open(folder), setAsideDamage: false, TimeProvider.System);
        var ledger = new StockLedger(Path.Combine(record.Folder.Path, "stock.jsonl"), TimeProvider.System);
        await using var bench = await PartBench.OpenAsync(simulator.Wiring, 0, rate, GapScreen.Lines, cancellationToken);
        var filtered = record.State.Profile!.FilteredOutputs.Select(output => output.Number).ToList();
        Say($"Reading the {filtered.Count} capacitors that came off ...");
        await new OldSetReading(
            bench.Parts, ledger, StockJob.NameOf(record.State), filtered, new(null, null), new(), TextWriter.Null, TimeProvider.System).RunAsync(cancellationToken);
        Say($"Taking in {simulator.Parts} parts of an invented drawer ...");
        await new PartIntake(bench.Parts, ledger, Label, TextWriter.Null, TimeProvider.System).RunAsync(simulator.Parts, cancellationToken);
        var options = new MatchOptions();
        Say("Matching the whole generator ...");
        var match = await new JobMatch(record, ledger, TimeProvider.System).MatchAsync(new(), options, cancellationToken);
        ResultFiles.Write(record.Folder, PickingList.From(match));
        Say("Measuring and fitting ...");
        var next = new NextBest(options, TimeProvider.System);
        var targets = MatchTargets.Of(record.State, 0);
        var open = await new PartFitting(bench.Parts, ledger, record, StockJob.NameOf(record.State), next, new(), TextWriter.Null).RunAsync(targets, cancellationToken);
        ResultFiles.Write(record);
        Tell(record.State, match.Match, targets, open.Count);
    }

    /// <summary>Reads every fitted output's level with its parts soldered in.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="simulator">The simulated bench.</param>
    /// <param name="rate">How much faster than real it runs.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public static async Task<JobOutcome> CheckAsync(string folder, SimulatedBench simulator, double rate, CancellationToken cancellationToken)
    {
        Say("Checking the fitted outputs' levels ...");
        var record = JobRecord.Resume(JobFolder.Open(folder), setAsideDamage: false, TimeProvider.System);
        var outcome = await HostedJob.RunAsync(
            record, new() { Wiring = simulator.Wiring, Stages = [JobStage.Check], HandsFree = true, ClockRate = rate }, cancellationToken);
        var seen = record.State.Checked.Values.ToList();
        var worst = seen.Select(one => Math.Abs(one.DifferenceDecibels)).DefaultIfEmpty().Max();
        Say($"Check: {seen.Count} levels with the parts soldered in, at most {Number(worst)} dB from what the sweep predicted; {seen.Count(one => !one.IsExplained)} unexplained.");
        return outcome;
    }

    private static void Tell(JobState state, MatchResult match, IReadOnlyList<MatchTarget> targets, int open)
    {
        var fitted = state.Fitted.Values.Select(one => one.LossDecibels).ToList();
        var nominal = targets.Select(target => new LevelLoss(target).Decibels(Expected(state, target.Output))).ToList();
        Say("");
        Say($"Match: {match.Outside.Value} of {match.Outputs.Count} outputs outside 0.05 dB, {match.PartsUsed.Value} parts, {Number(match.TotalLossDecibels)} dB in all; "
            + $"proven: no match is below {match.Outside.Bound} outside, {match.PartsUsed.Bound} parts, {Number(match.TotalLossBoundDecibels)} dB.");
        Say($"Before: nominal parts straight from the drawer would lose {Number(nominal.Sum())} dB over {nominal.Count} outputs, {Number(nominal.Max())} dB at the worst.");
        Say($"After: measured before soldering, the {fitted.Count} fitted outputs lose {Number(fitted.Sum())} dB, {Number(fitted.DefaultIfEmpty().Max())} dB at the worst."
            + (open > 0 ? $" {open} wait for other parts." : ""));
        Say("");
    }

    private static long Expected(JobState state, int output) =>
        state.Profile!.FilteredOutputs.Single(one => one.Number == output).Capacitor!.ExpectedPicofarads;

    private static string Number(double decibels) => decibels.ToString("0.0000", CultureInfo.InvariantCulture);

    private static void Say(string text) => AnsiConsole.WriteLine(text);
}
