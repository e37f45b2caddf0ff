using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Intake;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Intake;

/// <summary>A capacitance meter that is unplugged while parts come in or go into outputs on the page.</summary>
public sealed class BoardedGapTests
{
    private readonly ReturningMeters _place = new();
    private readonly FakeCapacitanceMeter _before = new();
    private readonly FakeCapacitanceMeter _after = new();
    private readonly BenchBoard _board = new();
    private readonly List<BenchStatus> _shown = [];
    private readonly List<BenchSound> _sounds = [];

    public BoardedGapTests()
    {
        _board.Changed += _shown.Add;
        _board.Sounded += _sounds.Add;
    }

    [Fact]
    public async Task The_page_says_what_is_missing_lets_it_be_heard_once_and_goes_on_by_itself()
    {
        _before.Reads(100_000, 100_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(100_060, 100_060, 100_060, 100_060);
        _place.ThenGone();

        var part = await _place.PassAsync(Parts().NextAsync(default));

        Assert.Equal(100_060, part!.Capacitance.Picofarads);
        var paused = _shown.Where(status => status.Activity == BenchActivity.Paused).ToList();
        Assert.All(paused, status => Assert.Contains($"The capacitance meter at {ReturningMeters.Resource} is gone", status.Message, StringComparison.Ordinal));
        Assert.All(paused, status => Assert.DoesNotContain("Ctrl-C", status.Message, StringComparison.Ordinal));
        Assert.Equal([BenchSound.Question], _sounds);
        Assert.Equal(BenchActivity.Waiting, _board.Status.Activity);
        Assert.StartsWith("The capacitance meter is back.", _board.Status.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_parts_that_were_asked_for_stay_asked_for_and_the_word_of_the_gap_goes_with_the_next_part()
    {
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(47_000, 47_000, 47_000, 47_000);
        var parts = Parts();
        await parts.AskForAsync(9, ["P00003"], default);

        await _place.PassAsync(parts.NextAsync(default));
        Assert.Equal((BenchActivity.Waiting, 9), (_board.Status.Activity, _board.Status.Output));
        Assert.Equal("P00003", Assert.Single(parts.Asked));
        await parts.SignalAsync(isFine: true, default);

        Assert.Equal((BenchActivity.Done, null), (_board.Status.Activity, _board.Status.Message));
    }

    private BoardedParts Parts() => new(new PausingParts(_place.Then(_after).Begin(_before, new BoardedGap(_board)), new()), _board);
}
