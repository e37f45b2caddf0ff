using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.History;

/// <summary>Draws the shop's own target curve from the jobs that it has finished.</summary>
public static class FinishedJobs
{
    /// <summary>The curve.</summary>
    /// <param name="shelf">The jobs.</param>
    /// <param name="generator">The generator's name as its profile says it; none where all finished jobs are of one kind.</param>
    /// <param name="name">What the curve is called.</param>
    /// <param name="leastToleranceDecibels">The floor of the tolerance.</param>
    /// <exception cref="BenchFaultException">No finished job, or several kinds of generator and none named.</exception>
    public static TargetCurve Draw(JobShelf shelf, string? generator, string name, double leastToleranceDecibels)
    {
        var finished = shelf.Jobs.Where(job => job.State.Ended.Contains(JobStage.AsLeft)).ToList();
        string[] kinds = [.. finished.Select(job => job.State.Profile!.Name).Distinct().Order(StringComparer.Ordinal)];
        var kind = generator ?? (kinds.Length == 1 ? kinds[0] : null);
        var chosen = finished.Where(job => job.State.Profile!.Name == kind).ToList();
        if (chosen.Count == 0)
            throw Nothing(shelf, kinds, generator);
        var source = $"{chosen.Count} finished {(chosen.Count == 1 ? "job" : "jobs")}: {string.Join(", ", chosen.Select(job => job.Name))}";
        return ShopCurve.Of(name, source, [.. chosen.Select(job => Sound(job.State))], leastToleranceDecibels);
    }

    // An output that was flagged when it was handed over is no model for the next generator.
    private static LevelCurve Sound(JobState state)
    {
        var curve = LevelCurve.Of(state, CurveStand.AsLeft);
        return curve with { Points = [.. curve.Points.Where(point => state.AsLeft[point.Output].Flags.Count == 0)] };
    }

    private static BenchFaultException Nothing(JobShelf shelf, string[] kinds, string? generator) => kinds.Length == 0
        ? new(
            BenchFault.BadFile, $"no finished job in {shelf.Folder}", "a job with a complete survey as left", "finish a job first") { AtTerminal = "autosweep survey --as-left" }
        : new(
            BenchFault.BadFile,
            generator is null ? $"finished jobs of {kinds.Length} kinds of generator: {string.Join("; ", kinds)}" : $"no finished job of '{generator}'",
            $"one of {string.Join("; ", kinds)}", "name one") { AtTerminal = "--generator-name" };
}
