using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.History;

/// <summary>A job in one line.</summary>
/// <param name="Job">The job.</param>
/// <param name="LumpinessBefore">Of the curve as found, in decibels; none where too little was read.</param>
/// <param name="LumpinessAfter">Of the curve as left.</param>
/// <param name="OffBefore">Outputs off the target as found; none where it was not read.</param>
/// <param name="OffAfter">Outputs off the target as left.</param>
public sealed record JobSummary(JobReading Job, double? LumpinessBefore, double? LumpinessAfter, int? OffBefore, int? OffAfter)
{
    /// <summary>Whether the generator was handed over: its last survey is complete.</summary>
    public bool IsFinished => Job.State.Ended.Contains(JobStage.AsLeft);

    /// <summary>The line of a job.</summary>
    public static JobSummary Of(JobReading job)
    {
        var (before, after) = (Comparison(job.State, CurveStand.AsFound), Comparison(job.State, CurveStand.AsLeft));
        return new(job, Lumps(job.State, CurveStand.AsFound, before), Lumps(job.State, CurveStand.AsLeft, after), Off(before), Off(after));
    }

    /// <summary>How many outputs have a result of a stage, and how many were planned.</summary>
    public (int Done, int Planned) Progress(JobStage stage)
    {
        var planned = Job.State.Planned.GetValueOrDefault(stage, []);
        return (planned.Count(output => Job.State.IsDone(stage, output)), planned.Count);
    }

    private static CurveComparison Comparison(JobState state, CurveStand stand) => CurveComparison.Of(LevelCurve.Of(state, stand), TargetCurve.Of(state));

    // Without a target, neighbours are compared with each other.
    private static double? Lumps(JobState state, CurveStand stand, CurveComparison comparison) =>
        Lumpiness.Of(comparison) ?? Lumpiness.Of(LevelCurve.Of(state, stand), state.Profile!);

    private static int? Off(CurveComparison comparison) => comparison.Deviations.Count == 0 ? null
        : comparison.Deviations.Count(one => one.Verdict is CurveVerdict.TooLoud or CurveVerdict.TooSoft);
}
