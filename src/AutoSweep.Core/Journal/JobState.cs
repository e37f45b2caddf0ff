using System.Collections.Immutable;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Journal;

/// <summary>What is known of a job: the fold over its journal. Every screen, file and resume is made from this and nothing else.</summary>
/// <remarks>Immutable; <see cref="Apply"/> gives the next state. Entries apply in sequence.</remarks>
public sealed record JobState
{
    /// <summary>A job of which nothing is known.</summary>
    public static JobState Empty { get; } = new();

    /// <summary>The sequence number of the last entry; 0 before the first.</summary>
    public long Sequence { get; private init; }

    /// <summary>The generator on the bench; none before <see cref="JobOpened"/>.</summary>
    public GeneratorProfile? Profile { get; private init; }

    /// <summary>When the job was opened; with the generator's name it tells this job from every other, wherever its folder goes.</summary>
    public DateTimeOffset? OpenedAt { get; private init; }

    /// <summary>The latest match of parts to outputs; none before the first.</summary>
    public PartsMatched? Matched { get; private init; }

    /// <summary>The bench that took the latest readings.</summary>
    public BenchConnected? Bench { get; private init; }

    /// <summary>The outputs planned for each stage that has begun.</summary>
    public ImmutableDictionary<JobStage, IReadOnlyList<int>> Planned { get; private init; } = ImmutableDictionary<JobStage,
        IReadOnlyList<int>>.Empty;

    /// <summary>The stages that have covered every planned output.</summary>
    public ImmutableHashSet<JobStage> Ended { get; private init; } = [];

    /// <summary>The latest survey of each output, by number.</summary>
    public ImmutableSortedDictionary<int, OutputSurveyed> Surveyed { get; private init; } = ImmutableSortedDictionary<int,
        OutputSurveyed>.Empty;

    /// <summary>The latest survey of each output as it is handed over, by number.</summary>
    public ImmutableSortedDictionary<int, OutputSurveyed> AsLeft { get; private init; } = ImmutableSortedDictionary<int, OutputSurveyed>.Empty;

    /// <summary>The target curve that was chosen for this job; none while the profile's own stands.</summary>
    public TargetCurve? ChosenTarget { get; private init; }

    /// <summary>The latest sweep of each output, by number.</summary>
    public ImmutableSortedDictionary<int, OutputSwept> Swept { get; private init; } = ImmutableSortedDictionary<int, OutputSwept>.Empty;

    /// <summary>The readings behind each output's latest sweep, by number; those of a broken-off try are not among them.</summary>
    public ImmutableDictionary<int, ImmutableList<LevelRead>> SweepReadings { get; private init; } = ImmutableDictionary<int,
        ImmutableList<LevelRead>>.Empty;

    /// <summary>What was fitted at each output, by number.</summary>
    public ImmutableSortedDictionary<int, OutputFitted> Fitted { get; private init; } = ImmutableSortedDictionary<int, OutputFitted>.Empty;

    /// <summary>The latest check of each fitted output, by number.</summary>
    public ImmutableSortedDictionary<int, OutputChecked> Checked { get; private init; } = ImmutableSortedDictionary<int, OutputChecked>.Empty;

    /// <summary>What was done at the magnets.</summary>
    public LevellingRecord Levelling { get; private init; } = LevellingRecord.Empty;

    /// <summary>How the work at each output's magnet ended, by number.</summary>
    public ImmutableSortedDictionary<int, OutputLevelled> Levelled => Levelling.Levelled;

    /// <summary>The output at the clips and what was read of it so far; none between outputs.</summary>
    public OutputInHand? InHand { get; private init; }

    /// <summary>Outputs in the order in which they were completed in the running stage, oldest first.</summary>
    public ImmutableList<int> ClippingOrder { get; private init; } = [];

    // Where the readings of the output in hand stand in the journal.
    private ImmutableList<long> ReadAt { get; init; } = [];

    private ResultHistory Results { get; init; } = ResultHistory.Empty;

    /// <summary>The planned outputs of a stage that have no result yet, in ascending number.</summary>
    public IEnumerable<int> Missing(JobStage stage) =>
        Planned.GetValueOrDefault(stage, []).Where(output => !IsDone(stage, output));

    /// <summary>The outputs of one of the two surveys: as left for <see cref="JobStage.AsLeft"/>, as found otherwise.</summary>
    public ImmutableSortedDictionary<int, OutputSurveyed> SurveyOf(JobStage stage) => stage == JobStage.AsLeft ? AsLeft : Surveyed;

    /// <summary>Whether a stage has a result for an output.</summary>
    public bool IsDone(JobStage stage, int output) => stage switch
    {
        JobStage.Survey => Surveyed.ContainsKey(output),
        JobStage.Sweep => Swept.ContainsKey(output),
        JobStage.AsLeft => AsLeft.ContainsKey(output),
        JobStage.Level => Levelled.ContainsKey(output),
        _ => Checked.ContainsKey(output),
    };

    /// <summary>The latest result of a stage that has not been taken back, with its place in the journal; none before the first.</summary>
    public (long Sequence, int Output)? LastResult(JobStage stage) => stage == JobStage.Level ? Levelling.Last : Results.Last(stage);

    /// <summary>The latest fitting that has not been taken back, with its place in the journal; none before the first.</summary>
    public (long Sequence, OutputFitted Fitted)? LastFitting => Results.Last<OutputFitted>();

    /// <summary>The latest choice of a target curve that has not been taken back, with its place in the journal; none before the first.</summary>
    public (long Sequence, TargetCurve Target)? LastTarget =>
        Results.Last<TargetChosen>() is { } last ? (last.Sequence, last.Result.Target) : null;

    /// <summary>The state after one more entry.</summary>
    public JobState Apply(JournalEntry entry)
    {
        var next = entry.Event switch
        {
            JobOpened opened => this with { Profile = opened.Profile, OpenedAt = entry.At },
            TargetChosen chosen => this with { ChosenTarget = chosen.Target },
            PartsMatched matched => this with { Matched = matched },
            BenchConnected bench => this with { Bench = bench, InHand = null },
            InstrumentLost => this with { InHand = null },
            StageStarted started => Start(started),
            StageEnded ended => this with { Ended = Ended.Add(ended.Stage), InHand = null },
            OutputRecognised recognised => this with { InHand = new(recognised.Stage, recognised.Output, recognised.ToneHertz, []) },
            LevelRead read => Keep(read, entry.Sequence),
            OutputSurveyed surveyed => Complete(surveyed),
            OutputSwept swept => Complete(swept),
            OutputFitted fitted => this with { Fitted = Fitted.SetItem(fitted.Output, fitted), Checked = Checked.Remove(fitted.Output) },
            OutputChecked seen => Complete(seen),
            OutputAbandoned => this with { InHand = null },
            OutputLevelled levelled => this with { InHand = null, ClippingOrder = ClippingOrder.Add(levelled.Output) },
            EntryWithdrawn withdrawn => Withdraw(withdrawn.Sequence),
            _ => this,
        };
        return next with
        {
            Sequence = entry.Sequence,
            Levelling = Levelling.Apply(entry),
            Results = Results.Apply(entry),
        };
    }

    // Going on with a stage after a stop keeps the order of clipping: it is evidence for what comes next.
    private JobState Start(StageStarted started) => this with
    {
        ClippingOrder = Planned.ContainsKey(started.Stage) ? ClippingOrder : [],
        Planned = Planned.SetItem(started.Stage, started.Planned),
        InHand = null,
    };

    private JobState Complete(OutputSurveyed surveyed) => this with
    {
        Surveyed = surveyed.Stage == JobStage.AsLeft ? Surveyed : Surveyed.SetItem(surveyed.Output, surveyed),
        AsLeft = surveyed.Stage == JobStage.AsLeft ? AsLeft.SetItem(surveyed.Output, surveyed) : AsLeft,
        InHand = null,
        ClippingOrder = ClippingOrder.Add(surveyed.Output),
    };

    private JobState Complete(OutputChecked seen) => this with
    {
        Checked = Checked.SetItem(seen.Output, seen),
        InHand = null,
        ClippingOrder = ClippingOrder.Add(seen.Output),
    };

    private JobState Complete(OutputSwept swept) => this with
    {
        Swept = Swept.SetItem(swept.Output, swept),
        SweepReadings = SweepReadings.SetItem(swept.Output, InHand?.Output == swept.Output ? InHand.Readings : []),
        InHand = null,
        ClippingOrder = ClippingOrder.Add(swept.Output),
    };

    private JobState Keep(LevelRead read, long sequence) => InHand?.Output != read.Output ? this : this with
    {
        InHand = InHand with { Readings = InHand.Readings.Add(read) },
        ReadAt = InHand.Readings.IsEmpty ? [sequence] : ReadAt.Add(sequence),
    };

    // A typed level that was taken back while its output is in hand.
    private JobState Forget(long sequence) => InHand is { } hand && ReadAt.IndexOf(sequence) is >= 0 and var place && place < hand.Readings.Count
        ? this with { InHand = hand with { Readings = hand.Readings.RemoveAt(place) }, ReadAt = ReadAt.RemoveAt(place) }
        : this;

    // Undo brings the result before it back, where there was one.
    private JobState Withdraw(long sequence) => Results.At(sequence) switch
    {
        OutputSurveyed { Stage: JobStage.AsLeft } taken => this with { AsLeft = Replace(AsLeft, taken.Output,
            Results.Before<OutputSurveyed>(sequence, one => one.Output == taken.Output && one.Stage == taken.Stage)), Ended = Ended.Remove(JobStage.AsLeft) },
        OutputSurveyed taken => this with { Surveyed = Replace(Surveyed, taken.Output,
            Results.Before<OutputSurveyed>(sequence, one => one.Output == taken.Output && one.Stage == taken.Stage)), Ended = Ended.Remove(JobStage.Survey) },
        OutputSwept taken => this with { Swept = Replace(Swept, taken.Output,
            Results.Before<OutputSwept>(sequence, one => one.Output == taken.Output)), Ended = Ended.Remove(JobStage.Sweep) },
        OutputChecked taken => this with { Checked = Replace(Checked, taken.Output,
            Results.Before<OutputChecked>(sequence, one => one.Output == taken.Output)), Ended = Ended.Remove(JobStage.Check) },
        OutputFitted taken => this with { Fitted = Replace(Fitted, taken.Output,
            Results.Before<OutputFitted>(sequence, one => one.Output == taken.Output)) },
        TargetChosen => this with { ChosenTarget = Results.Before<TargetChosen>(sequence, _ => true)?.Target },
        _ => Levelling.Holds(sequence) ? this with { Ended = Ended.Remove(JobStage.Level) } : Forget(sequence),
    };

    private static ImmutableSortedDictionary<int, T> Replace<T>(ImmutableSortedDictionary<int, T> known, int output, T? earlier) =>
        earlier is null ? known.Remove(output) : known.SetItem(output, earlier);
}
