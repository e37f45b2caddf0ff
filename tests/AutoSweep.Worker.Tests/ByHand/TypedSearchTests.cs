using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.ByHand;

/// <summary>Every mix of a bench of which a person does a part.</summary>
public class TypedSearchTests
{
    public static TheoryData<bool, bool> Mixes => new() { { true, true }, { true, false }, { false, true } };

    [Theory]
    [MemberData(nameof(Mixes))]
    public async Task The_peak_is_found_whoever_reads_and_whoever_dials(bool isRead, bool isDialled)
    {
        using var bench = new MixedBench(isRead, isDialled);

        var result = await bench.SearchAsync();

        Assert.Equal(PeakStopReason.BoundReached, result.Reason);
        // 0.05 dB, which a search by hand is held to, are 0.107 half-widths (10 log10(1 + u²)).
        Assert.Equal(MixedBench.PeakNanofarads, result.Peak!.Value.Nanofarads, 0.107 * MixedBench.HalfWidthNanofarads);
        Assert.Equal(isRead, bench.Person.Asked.Any(question => question.Contains("LEVEL in mV?", StringComparison.Ordinal)));
        Assert.Equal(isDialled, bench.Person.Asked.Any(question => question.Contains("DIAL", StringComparison.Ordinal)));
        Assert.Equal(isDialled, bench.Person.Asked.Any(question => question.Contains("MEASURE", StringComparison.Ordinal)));
    }

    // By eye it is taken back at the next question, the dials or the level; with a meter that has a port, at the dials.
    [Theory]
    [MemberData(nameof(Mixes))]
    public async Task A_level_that_was_taken_back_stays_on_record_counts_for_nothing_and_its_setting_is_read_again(bool isRead, bool isDialled)
    {
        // With a port a level is two samples: the first of the second level.
        using var bench = new MixedBench(isRead, isDialled) { Slip = (isRead ? 2 : 3, 1.5) };

        var result = await bench.SearchAsync();

        var withdrawn = Assert.Single(bench.Written.OfType<EntryWithdrawn>());
        Assert.Equal(bench.Written.OfType<LevelRead>().Count() - 1, bench.Counted.Count);
        var read = bench.Written.OfType<LevelRead>().ToList();
        var taken = read.Except(bench.Counted).Single();
        Assert.Equal(taken.Picofarads, read[read.IndexOf(taken) + 1].Picofarads);
        Assert.True(withdrawn.Sequence > 0);
        Assert.Equal(MixedBench.PeakNanofarads, result.Peak!.Value.Nanofarads, 0.107 * MixedBench.HalfWidthNanofarads);
    }

    [Fact]
    public async Task At_the_first_question_there_is_nothing_to_take_back()
    {
        using var bench = new MixedBench(isRead: true, isDialled: true);

        await bench.SearchAsync();

        Assert.DoesNotContain("takes the last level back", bench.Person.Asked[0], StringComparison.Ordinal);
        Assert.Contains("takes the last level back", bench.Person.Asked[2], StringComparison.Ordinal);
    }
}
