using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Core.Tests.Support;

/// <summary>Values that stand for "some" where a test does not care which.</summary>
internal static class Some
{
    public static DateTimeOffset Time { get; } = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    public static GeneratorProfile Profile { get; } = GeneratorProfileLibrary.Open("invented-smallbench-14-60hz");

    public static OutputSwept Swept(int output, long? picofarads = 100_000) => new()
    {
        Output = output,
        ToneHertz = 740,
        Reason = PeakStopReason.BoundReached,
        PeakPicofarads = picofarads,
        Law = ResponseLaw.Series,
        Readings = 6,
    };

    public static PartsMatched Matched { get; } = new()
    {
        Ledger = "/shop/stock.jsonl",
        LedgerSequence = 12,
        Outputs = [new(49, 254_393, ["P00012", "P00031"], 254_401, 0.00125), new(50, 241_000, [], 0, null)],
        LossLimitDecibels = 0.05,
        Outside = new(1, 1),
        PartsUsed = new(2, 2),
        Moved = new(0, 0),
        TotalLoss = new(12_500, 12_500),
        Seed = 1,
    };

    public static LevelRead Read(int output, long picofarads) => new()
    {
        Stage = JobStage.Sweep,
        Output = output,
        Picofarads = picofarads,
        Millivolts = 5,
        RelativeNoise = 0.005,
        Samples = 3,
        Settled = true,
        Seconds = 1.5,
    };

    public static JobState Fold(params JournalEvent[] events) => Entries(events)
        .Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));

    public static IEnumerable<JournalEntry> Entries(params JournalEvent[] events) =>
        events.Select((what, index) => new JournalEntry(index + 1, Time.AddSeconds(index), what));
}
