using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Tests.Page.Work;

public sealed class PageDialogueTests
{
    private static readonly DecadeBox Box = new()
    {
        StrayPicofarads = 0, Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 10_000 }, new() { StepPicofarads = 1000 }],
    };

    private readonly PageDialogue _person = new();

    [Fact]
    public async Task Dials_are_asked_for_with_their_positions_and_those_to_be_turned()
    {
        var box = new HandDialledBox(Box, _person);
        var first = box.DialAsync(Capacitance.FromPicofarads(123_000), canTakeBack: false, default);
        Answer("");
        await first;

        var second = box.DialAsync(Capacitance.FromPicofarads(133_000), canTakeBack: true, default);

        Assert.Equal([new("100 nF", 1, false), new("10 nF", 3, true), new("1 nF", 3, false)], _person.Asked!.Detail!.Dials);
        Assert.True(_person.Asked.Detail.CanTakeBack);
        Assert.Equal(new Capacitance(133_000), _person.Asked.Detail.Total);
        Answer("u");
        Assert.Null(await second);
    }

    [Fact]
    public async Task What_was_wrong_with_an_answer_stands_by_until_the_next_answer()
    {
        var meter = new EyeReadMeter(_person, new());
        var asked = meter.AskAsync(canTakeBack: false, default);

        Answer("twelve");
        await Until(() => _person.Asked is not null);
        Assert.Contains("'twelve' is no level", Assert.Single(_person.Reply), StringComparison.Ordinal);

        Answer("12.4");
        Assert.Equal(0.0124, (await asked)!.Value.Volts, 9);
        Assert.Empty(_person.Reply);
        Assert.Single(_person.Told);
    }

    [Fact]
    public async Task An_answer_to_a_question_of_before_is_not_taken()
    {
        var asked = _person.AskAsync("Now?", default);

        Assert.False(_person.Answer(Guid.NewGuid(), "yes"));
        Answer("no");

        Assert.Equal("no", await asked);
    }

    private void Answer(string line) => Assert.True(_person.Answer(_person.Asked!.Id, line));

    private async Task Until(Func<bool> condition)
    {
        var there = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _person.Changed += () =>
        {
            if (condition())
                there.TrySetResult();
        };
        if (!condition())
            await there.Task.WaitAsync(TimeSpan.FromSeconds(60), TimeProvider.System);
    }
}
