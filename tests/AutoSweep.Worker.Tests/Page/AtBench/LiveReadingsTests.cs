using AutoSweep.Core.Journal;
using AutoSweep.Worker.Page.AtBench;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class LiveReadingsTests
{
    private static readonly DateTimeOffset At = new(2026, 3, 1, 9, 0, 0, 250, TimeSpan.Zero);

    private static readonly OutputRecognised Nine = new(JobStage.Sweep, 9, 740, RecognisedBy.Tone);

    public static TheoryData<JournalEvent> Breaks =>
    [
        new OutputAbandoned(JobStage.Sweep, 9, "the clip came off"), new InstrumentLost(BenchInstrument.Meter, "m", "gone"),
        new BenchConnected { MeterResource = "m", MeterIdentity = "Maker,Meter,1,1", MeterDriver = "scpi-dmm", AmplifierGain = 1 },
    ];

    [Fact]
    public void A_reading_carries_its_place_in_the_journal_and_its_time()
    {
        var reading = Assert.Single(Fold(Nine, Read(9, 104_000)).Readings);

        Assert.Equal((2L, At.ToUnixTimeMilliseconds(), 104_000L, 4.2), (reading.Sequence, reading.UnixMilliseconds, reading.Picofarads!.Value, reading.Millivolts));
    }

    [Fact]
    public void The_next_output_begins_empty() => Assert.Equal((10, 0), Sizes(Fold(Nine, Read(9), Nine with { Output = 10 })));

    [Fact]
    public void A_reading_that_was_taken_back_is_gone() => Assert.Equal((9, 1), Sizes(Fold(Nine, Read(9), Read(9), new EntryWithdrawn(3))));

    [Fact]
    public void Readings_stay_when_the_output_is_done() => Assert.Equal((9, 1), Sizes(Fold(Nine, Read(9), Support.Some.Swept(9))));

    [Theory]
    [MemberData(nameof(Breaks))]
    public void What_does_not_count_any_more_is_not_shown(JournalEvent what) => Assert.Equal(LiveReadings.None, Fold(Nine, Read(9), what));

    [Fact]
    public void A_reading_at_a_magnet_is_one_too() => Assert.Equal((9, 1), Sizes(Fold(Nine, new MagnetRead { Output = 9, Millivolts = 4, TargetMillivolts = 4, SdDecibels = 0.1 })));

    private static (int? Output, int Readings) Sizes(LiveReadings live) => (live.Output, live.Readings.Count);

    private static LiveReadings Fold(params JournalEvent[] events) =>
        events.Select((what, place) => new JournalEntry(place + 1, At, what)).Aggregate(LiveReadings.None, (live, entry) => live.Apply(entry));

    private static LevelRead Read(int output, long? picofarads = null) => new()
    {
        Stage = JobStage.Sweep, Output = output, Picofarads = picofarads, Millivolts = 4.2, RelativeNoise = 0.001, Samples = 3, Settled = true, Seconds = 1,
    };
}
