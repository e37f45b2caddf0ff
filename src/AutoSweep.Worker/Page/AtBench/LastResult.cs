using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The result that can be taken back while nothing goes on: a stage ends with its last output, and that one may be the wrong one.</summary>
/// <param name="Stage">The stage that gave it.</param>
/// <param name="Sequence">Its place in the journal.</param>
/// <param name="Output">The output.</param>
public sealed record LastResult(JobStage Stage, long Sequence, int Output)
{
    // The work at the magnets has its own page, which takes its readings back one by one.
    private static readonly JobStage[] Stages = [JobStage.Survey, JobStage.Sweep, JobStage.Check, JobStage.AsLeft];

    /// <summary>The latest result of a job; none before the first, and none once parts were fitted after it, because they hang on it.</summary>
    public static LastResult? Of(JobState state)
    {
        var latest = Stages.Select(stage => (Stage: stage, Last: state.LastResult(stage))).Where(one => one.Last is not null)
            .Select(one => new LastResult(one.Stage, one.Last!.Value.Sequence, one.Last.Value.Output)).MaxBy(one => one.Sequence);
        return latest is not null && !(state.LastFitting is { } fitting && fitting.Sequence > latest.Sequence) ? latest : null;
    }
}
