using System.Globalization;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Levelling;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>The demo's last work at the bench: the magnets of what is still off the curve, and the generator as it is left.</summary>
public static class DemoLevels
{
    // The invented technician has put a leaf of 0.2 mm in at every rod; the simulated hands are asked, not people, so nobody needs to type.
    private static readonly LevellingOptions Levelling = new() { Acknowledged = "simulated hands", LeastGapMillimetres = 0.2 };

    /// <summary>Brings what is off the curve after the recap into its band.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="simulator">The simulated bench.</param>
    /// <param name="rate">How much faster than real it runs.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public static async Task<JobOutcome> LevelAsync(string folder, SimulatedBench simulator, double rate, CancellationToken cancellationToken)
    {
        Say("Levelling what is off the curve at its magnet ...");
        var record = Resume(folder);
        var outcome = await HostedJob.RunAsync(record, Plan(simulator, JobStage.Level, rate) with { Levelling = Levelling }, cancellationToken);
        var levelled = record.State.Levelling.Levelled.Values.ToList();
        var moves = levelled.Select(one => one.Moves).Order().ToList();
        Say($"Levelled: {levelled.Count(one => one.Ending == GuidanceEnding.InBand)} of {levelled.Count} outputs brought into their band, "
            + $"{(moves.Count > 0 ? moves[moves.Count / 2] : 0)} moves each in the median.");
        return outcome;
    }

    /// <summary>Surveys every output once more, as the generator would be handed over.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="simulator">The simulated bench.</param>
    /// <param name="rate">How much faster than real it runs.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public static async Task<JobOutcome> SurveyAsLeftAsync(
        string folder, SimulatedBench simulator, double rate, CancellationToken cancellationToken)
    {
        Say("Surveying the generator as it is left ...");
        var record = Resume(folder);
        var outcome = await HostedJob.RunAsync(record, Plan(simulator, JobStage.AsLeft, rate), cancellationToken);
        var target = record.State.ChosenTarget ?? TargetCurve.Of(record.Profile);
        Say($"Level curve against the generator's own: lumpiness {Lumps(record.State, target, CurveStand.AsFound)} as found, "
            + $"{Lumps(record.State, target, CurveStand.AfterRecap)} after the recap, {Lumps(record.State, target, CurveStand.AsLeft)} as left.");
        return outcome;
    }

    private static JobRecord Resume(string folder) => JobRecord.Resume(JobFolder.Open(folder), setAsideDamage: false, TimeProvider.System);

    private static JobPlan Plan(SimulatedBench simulator, JobStage stage, double rate) =>
        new() { Wiring = simulator.Wiring, Stages = [stage], HandsFree = true, ClockRate = rate };

    private static string Lumps(JobState state, TargetCurve target, CurveStand stand) =>
        Lumpiness.Of(CurveComparison.Of(LevelCurve.Of(state, stand), target)) is { } decibels
            ? decibels.ToString("0.00", CultureInfo.InvariantCulture) + " dB"
            : "not known";

    private static void Say(string text) => AnsiConsole.WriteLine(text);
}
