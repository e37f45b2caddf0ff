using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Tests.Parts;

public sealed class OldSetLinesTests
{
    private readonly OldSetWords _words = new();
    private readonly StringWriter _answers = new();

    [Theory]
    [InlineData("x", OldSetWord.NoCapacitor)]
    [InlineData(" S ", OldSetWord.LeftOut)]
    [InlineData("q", OldSetWord.Ended)]
    public async Task A_word_is_said_of_the_one_that_is_asked_for(string typed, OldSetWord word)
    {
        _words.AskFor(7);

        Assert.True(new OldSetLines(_words).Take(typed));

        Assert.Equal(word, await _words.NextAsync(default));
    }

    [Fact]
    public void A_word_before_the_first_is_asked_for_and_a_value_say_nothing()
    {
        var lines = new OldSetLines(_words);
        Assert.True(lines.Take("x"));
        _words.AskFor(7);
        Assert.False(lines.Take("131n"));

        Assert.False(_words.NextAsync(default).IsCompleted);
    }

    [Fact]
    public async Task Beside_a_meter_a_line_that_is_no_word_is_answered_with_what_is_known()
    {
        _words.AskFor(7);

        await new OldSetLines(_words).ListenAsync(new StringReader("131n\nx"), _answers, default);

        Assert.Contains("'131n' is not known here: the meter reads the values. x and Enter", _answers.ToString(), StringComparison.Ordinal);
        Assert.Equal(OldSetWord.NoCapacitor, await _words.NextAsync(default));
    }

    [Fact]
    public async Task Typed_ahead_the_line_after_a_word_answers_the_next_question()
    {
        var parts = new TypedParts(new StringReader("x\n131n"), _answers, 0.005, new OldSetLines(_words).Take);
        _words.AskFor(7);
        using var dealtWith = new CancellationTokenSource();
        var first = parts.NextAsync(dealtWith.Token);
        Assert.Equal(OldSetWord.NoCapacitor, await _words.NextAsync(default));
        await dealtWith.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);

        Assert.Equal(131_000, (await parts.NextAsync(default))!.Capacitance.Picofarads);
    }
}
