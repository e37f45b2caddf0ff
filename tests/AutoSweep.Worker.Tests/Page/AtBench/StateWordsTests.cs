using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class StateWordsTests : IDisposable
{
    private static readonly Question Key = new("", WantsKey: true);

    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    public static TheoryData<BenchActivity, BenchTurn, string> Activities => new()
    {
        { BenchActivity.Connecting, BenchTurn.Rest, "Connecting" },
        { BenchActivity.Waiting, BenchTurn.Hands, "Clip it on" },
        { BenchActivity.Reading, BenchTurn.Meter, "Hands off" },
        { BenchActivity.Done, BenchTurn.Done, "Done" },
        { BenchActivity.NeedsYou, BenchTurn.Look, "Please look" },
        { BenchActivity.Finished, BenchTurn.Done, "All done" },
    };

    public void Dispose() => _job.Dispose();

    [Theory]
    [MemberData(nameof(Activities))]
    public void Every_activity_has_its_turn_and_its_word(BenchActivity activity, BenchTurn turn, string word)
    {
        var state = Of(new() { Activity = activity });

        Assert.Equal((turn, word), (state.Turn, state.Word));
    }

    [Fact]
    public void Before_the_first_clip_the_next_output_by_the_plan_stands_large_with_the_tone_to_expect()
    {
        var state = Of(new() { Activity = BenchActivity.Waiting, Next = 9 });

        Assert.Equal(9, state.Output);
        Assert.Equal(FormattableString.Invariant($"about {_job.Profile.ToneOf(_job.Profile.Outputs[8]).Hertz:0.0} Hz"), state.Tone);
        Assert.Equal("or any other that is open on the map", state.Hint);
    }

    [Fact]
    public void The_output_that_is_read_stands_large_with_its_counted_tone_and_no_other()
    {
        var state = Of(new() { Activity = BenchActivity.Reading, Output = 7, ToneHertz = 880.126, Next = 9 });

        Assert.Equal((7, "880.13 Hz", "wait for the sound"), (state.Output, state.Tone, state.Hint));
    }

    [Fact]
    public void After_an_output_the_next_one_is_named() =>
        Assert.StartsWith("next: 9, about ", Of(new() { Activity = BenchActivity.Done, Output = 7, ToneHertz = 880, Next = 9 }).Hint, StringComparison.Ordinal);

    [Fact]
    public void Step_by_step_the_hint_names_the_key_and_the_terminals_line_is_not_repeated()
    {
        var state = StateWords.Of(_job.State, new() { Activity = BenchActivity.Waiting, Next = 3, Message = "Clip output 3, then Enter. s skips it" }, Key);

        Assert.Equal("then Enter, or the pedal", state.Hint);
        Assert.Null(state.Message);
    }

    [Fact]
    public void A_missing_instrument_is_named_and_no_key_of_a_terminal_is()
    {
        var gone = new BenchFaultException(BenchFault.NotReachable, "nothing", "a meter", "look");
        var status = new BenchStatus { Activity = BenchActivity.Reading }.Paused([new(BenchInstrument.Meter, "TCPIP::192.0.2.10::5025::SOCKET", gone)]);

        var state = Of(status);

        Assert.Equal((BenchTurn.Missing, "No meter"), (state.Turn, state.Word));
        Assert.Contains("192.0.2.10", state.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Ctrl-C", state.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_missing_instruments_are_both_named() =>
        Assert.Equal("No meter and no fixture", Of(new() { Activity = BenchActivity.Paused, Missing = [BenchInstrument.Meter, BenchInstrument.Fixture] }).Word);

    [Fact]
    public void A_magnets_move_is_the_word_itself()
    {
        var status = new BenchStatus { Activity = BenchActivity.Moving, Output = 61, Levelling = new(1.4, 0.5, new(MoveDirection.Out, 0.3, 0.1)) };

        Assert.Equal((BenchTurn.Magnet, "Magnet OUT 0.300 mm", "lock it and keep off"), (Of(status).Turn, Of(status).Word, Of(status).Hint));
        Assert.Equal("lock it, then Enter or the pedal", StateWords.Of(_job.State, status, Key).Hint);
    }

    [Theory]
    [InlineData(BenchQuestionKind.Level, "Read the meter")]
    [InlineData(BenchQuestionKind.Dials, "Turn the dials")]
    [InlineData(BenchQuestionKind.Box, "Measure the box")]
    public void A_question_to_the_hands_comes_before_what_the_worker_does(BenchQuestionKind kind, string word)
    {
        var asked = new Question("?", WantsKey: false) { Detail = new("?", kind) };

        var state = StateWords.Of(_job.State, new() { Activity = BenchActivity.Reading, Output = 9 }, asked);

        Assert.Equal((BenchTurn.Hands, word, 9), (state.Turn, state.Word, state.Output));
    }

    private BigState Of(BenchStatus status) => StateWords.Of(_job.State, status, null);
}
