using System.Collections.Immutable;

namespace AutoSweep.Core.Journal;

/// <summary>The results of a job that have not been taken back, by their place in the journal: what an undo takes back, and what it brings back.</summary>
/// <remarks>Immutable. What is done at the magnets has a history of its own, <see cref="LevellingRecord"/>.</remarks>
/// <param name="Results">The results.</param>
internal sealed record ResultHistory(ImmutableDictionary<long, JournalEvent> Results)
{
    /// <summary>No result yet.</summary>
    public static ResultHistory Empty { get; } = new(ImmutableDictionary<long, JournalEvent>.Empty);

    /// <summary>The history after one more entry.</summary>
    public ResultHistory Apply(JournalEntry entry) => entry.Event switch
    {
        OutputSurveyed or OutputSwept or OutputFitted or OutputChecked or TargetChosen => new(Results.SetItem(entry.Sequence, entry.Event)),
        EntryWithdrawn withdrawn => new(Results.Remove(withdrawn.Sequence)),
        _ => this,
    };

    /// <summary>The result at a place; none where there is none, or it was taken back.</summary>
    public JournalEvent? At(long sequence) => Results.GetValueOrDefault(sequence);

    /// <summary>The latest result of a stage and its output; none before the first.</summary>
    public (long Sequence, int Output)? Last(JobStage stage) => Results
        .Select(result => (result.Key, Output: OutputOf(stage, result.Value)))
        .Where(result => result.Output is not null)
        .Select(result => ((long Sequence, int Output)?)(result.Key, result.Output!.Value))
        .MaxBy(result => result!.Value.Sequence);

    /// <summary>The latest result of a kind; none before the first.</summary>
    public (long Sequence, T Result)? Last<T>()
        where T : JournalEvent => Results
        .Where(result => result.Value is T)
        .Select(result => ((long Sequence, T Result)?)(result.Key, (T)result.Value))
        .MaxBy(result => result!.Value.Sequence);

    /// <summary>What counts when the result at a place is taken back: the latest other one of its kind; none where there is none.</summary>
    /// <param name="sequence">The place.</param>
    /// <param name="isSame">Whether a result is about the same.</param>
    public T? Before<T>(long sequence, Func<T, bool> isSame)
        where T : JournalEvent =>
        Results.Where(result => result.Key != sequence && result.Value is T one && isSame(one)).OrderBy(result => result.Key)
            .Select(result => (T)result.Value).LastOrDefault();

    private static int? OutputOf(JobStage stage, JournalEvent result) => (stage, result) switch
    {
        (JobStage.Survey or JobStage.AsLeft, OutputSurveyed surveyed) when surveyed.Stage == stage => surveyed.Output,
        (JobStage.Sweep, OutputSwept swept) => swept.Output,
        (JobStage.Check, OutputChecked seen) => seen.Output,
        _ => null,
    };
}
