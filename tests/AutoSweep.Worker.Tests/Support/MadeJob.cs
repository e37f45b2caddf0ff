using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Jobs on disk with made-up levels (invented; no generator was measured).</summary>
internal static class MadeJob
{
    public static GeneratorProfile Generator { get; } = GeneratorProfileLibrary.Open("invented-quillmark-93-60hz");

    /// <summary>Makes a finished job.</summary>
    /// <param name="folder">Its folder.</param>
    /// <param name="asFound">Decibels off the profile's target as found, by output.</param>
    /// <param name="asLeft">The same as left; none leaves the job unfinished.</param>
    /// <param name="opened">When.</param>
    /// <param name="profile">The generator.</param>
    public static void Write(
        string folder, Func<int, double> asFound, Func<int, double>? asLeft = null, DateTimeOffset? opened = null, GeneratorProfile? profile = null)
    {
        var clock = new FakeTimeProvider(opened ?? new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero));
        using var job = JobRecord.Begin(JobFolder.Open(folder), profile ?? Generator, "AutoSweep test", clock);
        Survey(job, JobStage.Survey, asFound, clock);
        if (asLeft is null)
            return;
        foreach (var output in job.Profile.FilteredOutputs)
            job.Append(Some.Swept(output.Number));
        Survey(job, JobStage.AsLeft, asLeft, clock);
    }

    private static void Survey(JobRecord job, JobStage stage, Func<int, double> off, FakeTimeProvider clock)
    {
        job.Append(new StageStarted(stage, [.. job.Profile.Outputs.Select(output => output.Number)]));
        foreach (var point in TargetCurve.Of(job.Profile).Points)
        {
            clock.Advance(TimeSpan.FromSeconds(10));
            job.Append(Some.Surveyed(point.Output) with
            {
                Stage = stage,
                Millivolts = point.Millivolts * Math.Pow(10, off(point.Output) / 20),
                RelativeUncertainty = 0.01,
            });
        }

        job.Append(new StageEnded(stage));
    }
}
