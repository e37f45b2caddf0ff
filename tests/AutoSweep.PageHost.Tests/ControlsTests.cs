using AutoSweep.Core;
using AutoSweep.Worker.Page.Guard;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.PageHost.Tests;

/// <summary>One screen holds the controls, the others watch.</summary>
public sealed class ControlsTests : IDisposable
{
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(1);

    private readonly FakeTimeProvider _time = new();
    private readonly Controls _controls;

    public ControlsTests()
    {
        _controls = new(_time);
        _controls.Arrive("first");
        _controls.Arrive("second");
    }

    public void Dispose() => _controls.Dispose();

    [Fact]
    public void The_first_screen_holds_them_and_the_second_is_refused_with_what_to_do()
    {
        var second = new ScreenRights(_controls) { Screen = "second" };

        var fault = Assert.Throws<BenchFaultException>(second.Require);

        Assert.Equal("first", _controls.Holder);
        Assert.True(second.OnlyWatches);
        Assert.Contains("ask for the controls", fault.WhatToDo, StringComparison.Ordinal);
        new ScreenRights(_controls) { Screen = "first" }.Require();
    }

    [Fact]
    public void The_holder_hands_them_to_the_screen_that_asks()
    {
        Assert.True(_controls.Ask("second"));
        Assert.Equal(("first", "second"), (_controls.Holder, _controls.Asker));

        _controls.HandOverFrom("first");

        Assert.Equal(("second", null), (_controls.Holder, _controls.Asker));
    }

    [Fact]
    public void Nobody_but_the_holder_hands_them_over_or_keeps_them()
    {
        _controls.Ask("second");

        _controls.HandOverFrom("second");
        _controls.Keep("second");

        Assert.Equal(("first", "second"), (_controls.Holder, _controls.Asker));
    }

    [Fact]
    public void A_holder_that_does_not_answer_loses_them_after_the_stated_time_and_not_before()
    {
        _controls.Ask("second");
        _time.Advance(Controls.AnswerTime - Moment);
        Assert.Equal("first", _controls.Holder);

        _time.Advance(Moment);

        Assert.Equal("second", _controls.Holder);
    }

    [Fact]
    public void A_holder_that_keeps_them_keeps_them()
    {
        _controls.Ask("second");
        _controls.Keep("first");

        _time.Advance(2 * Controls.AnswerTime);

        Assert.Equal(("first", null), (_controls.Holder, _controls.Asker));
    }

    [Fact]
    public void A_third_screen_waits_until_the_question_is_answered()
    {
        _controls.Ask("second");

        Assert.False(_controls.Ask("third"));
        _controls.HandOverFrom("first");

        Assert.Equal("second", _controls.Holder);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_reload_keeps_them_whichever_of_its_two_connections_is_noticed_first(bool oldEndsFirst)
    {
        if (oldEndsFirst)
            _controls.Leave("first");
        _controls.Arrive("first");
        if (!oldEndsFirst)
            _controls.Leave("first");

        _time.Advance(2 * Controls.Grace);

        Assert.Equal("first", _controls.Holder);
    }

    [Fact]
    public void A_holder_that_is_gone_frees_them_after_the_grace_for_whoever_acts_next()
    {
        _controls.Leave("first");
        _time.Advance(Controls.Grace - Moment);
        Assert.False(_controls.TryTake("second"));

        _time.Advance(Moment);

        Assert.Null(_controls.Holder);
        Assert.True(_controls.TryTake("second"));
    }

    [Fact]
    public void A_screen_that_asks_while_the_holder_is_gone_gets_them_when_the_grace_is_over()
    {
        _controls.Leave("first");
        _controls.Ask("second");

        _time.Advance(Controls.Grace);

        Assert.Equal("second", _controls.Holder);
    }

    [Fact]
    public void A_screen_that_asked_and_is_gone_does_not_get_them()
    {
        _controls.Ask("second");
        _controls.Leave("second");

        _time.Advance(2 * Controls.AnswerTime);

        Assert.Equal(("first", null), (_controls.Holder, _controls.Asker));
    }

    [Theory]
    [InlineData("0123456789abcdef0123456789abcdef", true)]
    [InlineData("0123456789abcdef", false)]
    [InlineData("0123456789abcdef0123456789abcdeg", false)]
    [InlineData(null, false)]
    public void A_screen_is_known_by_its_tabs_own_name_if_that_is_one(string? identity, bool isTaken)
    {
        var rights = new ScreenRights(new(_time));

        rights.Identify(identity);

        Assert.Equal(isTaken, rights.Screen == identity);
        Assert.True(rights.HoldsControls);
    }

    [Fact]
    public void A_screen_that_acts_before_it_has_said_who_it_is_keeps_what_it_took()
    {
        using var controls = new Controls(_time);
        var rights = new ScreenRights(controls);
        rights.Require();

        rights.Identify("0123456789abcdef0123456789abcdef");

        rights.Require();
        Assert.Equal("0123456789abcdef0123456789abcdef", controls.Holder);
    }

    [Fact]
    public void A_screen_whose_connection_ends_twice_leaves_once()
    {
        var (old, reloaded) = (new ScreenRights(_controls), new ScreenRights(_controls));
        const string name = "0123456789abcdef0123456789abcdef";
        old.Identify(name);
        reloaded.Identify(name);
        _controls.Ask(name);
        _controls.HandOverFrom("first");

        old.Away();
        old.Away();
        _time.Advance(2 * Controls.Grace);

        Assert.Equal(name, _controls.Holder);
    }
}
