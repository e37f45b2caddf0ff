using AutoSweep.Core.Generator;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Peaks;

public class GroupKnowledgeTests
{
    private static readonly Capacitance Expected = Capacitance.FromNanofarads(105);

    [Fact]
    public void Nothing_swept_leaves_the_belief_as_it_was() =>
        Assert.Equal(new PeakPrior { Expected = Expected }, GroupKnowledge.None.PriorFor(Expected));

    [Fact]
    public void Outputs_that_peak_a_tenth_high_move_the_next_ones_belief_up_and_narrow_it()
    {
        var prior = Taught(1.09, 1.10, 1.11, 1.10, 1.10).PriorFor(Expected);
        Assert.InRange(prior.Expected.Nanofarads, 105 * 1.07, 105 * 1.10);
        Assert.True(prior.LogSpread < 0.15);
        Assert.InRange(prior.Q, 8, 9.5);
    }

    [Fact]
    public void Evidence_for_a_law_adds_up_over_outputs()
    {
        Assert.Equal(2, Taught(1.0).PriorFor(Expected).LogOddsSeriesOverShunt, 6);
        Assert.Equal(6, Taught(1.0, 1.0, 1.0).PriorFor(Expected).LogOddsSeriesOverShunt, 6);
    }

    [Fact]
    public void One_odd_output_hardly_moves_the_belief()
    {
        var without = Taught(1.0, 1.01, 0.99, 1.0, 1.01).PriorFor(Expected);
        var with = Taught(1.0, 1.01, 0.99, 1.0, 1.01).Learn(Result(2.5, ResponseLaw.Shunt, -30), Expected).PriorFor(Expected);
        Assert.InRange(with.Expected.Nanofarads / without.Expected.Nanofarads, 0.98, 1.02);
        Assert.True(with.LogOddsSeriesOverShunt > 0);
    }

    [Theory]
    [InlineData(PeakStopReason.BudgetSpent)]
    [InlineData(PeakStopReason.ModelDoesNotHold)]
    [InlineData(PeakStopReason.LevelLost)]
    public void A_search_that_failed_teaches_nothing(PeakStopReason reason) =>
        Assert.Equal(0, GroupKnowledge.None.Learn(Result(1.3, ResponseLaw.Series, 9) with { Reason = reason }, Expected).Outputs);

    [Fact]
    public void Learning_leaves_the_older_knowledge_untouched()
    {
        var before = Taught(1.0);
        _ = before.Learn(Result(1.4, ResponseLaw.Series, 3), Expected);
        Assert.Equal(1, before.Outputs);
    }

    private static GroupKnowledge Taught(params double[] ratios) =>
        ratios.Aggregate(GroupKnowledge.None, (group, ratio) => group.Learn(Result(ratio, ResponseLaw.Series, 2), Expected));

    private static PeakResult Result(double ratio, ResponseLaw law, double logOdds) => new()
    {
        Reason = PeakStopReason.BoundReached,
        Peak = Capacitance.FromPicofarads(Expected.Picofarads * ratio),
        PeakSdPicofarads = 100,
        HalfWidthPicofarads = 13_000,
        Q = 8.5,
        Law = law,
        LogOddsSeriesOverShunt = logOdds,
        Trace = [],
    };
}
