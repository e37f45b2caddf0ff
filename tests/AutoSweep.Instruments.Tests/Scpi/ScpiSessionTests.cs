using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;
using FsCheck.Xunit;

namespace AutoSweep.Instruments.Tests.Scpi;

public sealed class ScpiSessionTests : IAsyncDisposable
{
    private const string Identity = "Invented Instruments,M1,77,1.0";
    private static readonly ExchangeOptions Times = new();

    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();
    private readonly FakeLink _link = new();

    public ValueTask DisposeAsync() => _link.DisposeAsync();

    [Fact]
    public async Task A_query_goes_out_as_one_line_and_its_reply_comes_back_without_the_terminator()
    {
        await using var session = NewSession();
        var reply = session.QueryAsync("READ?", default);
        Assert.Equal("READ?", await _link.NextLineAsync());
        _link.Send("+1.25E-03\r\n");
        Assert.Equal("+1.25E-03", await reply);
    }

    [Property(MaxTest = 100)]
    public async Task Replies_split_and_merged_anywhere_answer_their_own_questions(byte[] cuts, bool carriageReturn)
    {
        await using var link = new FakeLink { Pieces = cuts, Answer = line => $"{line[..^1]},1.0{(carriageReturn ? "\r\n" : "\n")}" };
        await using var session = new ScpiSession(link, new(), _time, _log);
        foreach (var query in (string[])["A?", "FETC:A:LONGER:ONE?", "B?", "*IDN?"])
            Assert.Equal($"{query[..^1]},1.0", await session.QueryAsync(query, default));
    }

    [Fact]
    public async Task A_late_answer_is_never_taken_for_that_of_the_next_question()
    {
        await using var session = await IdentifiedAsync(retries: 0);
        var late = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        await _time.ElapseAsync(Times.QueryTimeout);
        Assert.Equal(BenchFault.NoAnswer, (await Assert.ThrowsAsync<BenchFaultException>(() => late)).Kind);

        var next = session.QueryAsync("SYST:ERR?", default);
        await _time.AwaitedAsync(Times.QuietTime);
        _link.Send("+9.99E-03\n"); // the late answer, while the session waits for quiet
        await _time.ElapseAsync(Times.QuietTime);
        Assert.Equal("*IDN?", await _link.NextLineAsync());
        _link.Send($"{Identity}\n");
        Assert.Equal("SYST:ERR?", await _link.NextLineAsync());
        _link.Send("0,\"No error\"\n");
        Assert.Equal("0,\"No error\"", await next);
        Assert.Contains(_log.Lines, line =>
            line.Contains("9.99E-03", StringComparison.Ordinal) && line.Contains("dropped", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_answer_that_comes_even_after_the_quiet_time_is_dropped_before_the_identity()
    {
        await using var session = await IdentifiedAsync(retries: 0);
        await TimeOutAsync(session, "READ?");

        var next = session.QueryAsync("SYST:ERR?", default);
        await _time.ElapseAsync(Times.QuietTime);
        Assert.Equal("*IDN?", await _link.NextLineAsync());
        _link.Send($"+9.99E-03\n{Identity}\n");
        Assert.Equal("SYST:ERR?", await _link.NextLineAsync());
        _link.Send("0,\"No error\"\n");
        Assert.Equal("0,\"No error\"", await next);
    }

    [Fact]
    public async Task A_late_identity_is_not_taken_for_the_one_that_ends_the_resynchronisation()
    {
        await using var session = await IdentifiedAsync(retries: 0);
        await TimeOutAsync(session, "*IDN?");

        var next = session.QueryAsync("READ?", default);
        await _time.ElapseAsync(Times.QuietTime);
        Assert.Equal("*IDN?", await _link.NextLineAsync());
        await _time.AwaitedAsync(Times.QueryTimeout); // the time of this query; the session's last wait for quiet is as long
        _link.Send($"{Identity}\n"); // owed since the time-out
        await _time.AwaitedAsync(Times.QueryTimeout);
        _link.Send($"{Identity}\n"); // the one just asked for, late: the session begins to wait anew
        await _time.ElapseAsync(Times.QueryTimeout);
        Assert.Equal("READ?", await _link.NextLineAsync());
        _link.Send("+1.0E-03\n");
        Assert.Equal("+1.0E-03", await next);
    }

    [Fact]
    public async Task Silence_is_asked_again_and_every_retry_is_logged_with_its_reason()
    {
        await using var session = await IdentifiedAsync(retries: 2);
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        await _time.ElapseAsync(Times.QueryTimeout);
        await _time.ElapseAsync(Times.QuietTime);
        Assert.Equal("*IDN?", await _link.NextLineAsync());
        _link.Send($"{Identity}\n");
        Assert.Equal("READ?", await _link.NextLineAsync());
        _link.Send("+1.0E-03\n");
        Assert.Equal("+1.0E-03", await reply);
        Assert.Contains(_log.Lines, line =>
            line.Contains("asking READ? again (try 2 of 3): no answer within 2 s", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_silent_instrument_ends_in_a_fault_that_names_port_time_out_and_what_to_check()
    {
        await using var session = NewSession(retries: 0);
        var identity = session.IdentifyAsync(default);
        await _link.NextLineAsync();
        await _time.ElapseAsync(Times.QueryTimeout);
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => identity);
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Contains("TCPIP::meter.test::5025::SOCKET", fault.Found, StringComparison.Ordinal);
        Assert.Contains("2 s", fault.Expected, StringComparison.Ordinal);
        Assert.Contains("baud rate", fault.WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_garbled_line_is_a_fault_and_not_a_reading()
    {
        await using var session = NewSession(retries: 0);
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        _link.SendBytes(0xB1, 0xB0, (byte)'.', 0xB2, (byte)'\n'); // "10.2" with the wrong parity
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => reply);
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Contains("garbled", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_command_is_never_repeated()
    {
        await using var session = NewSession();
        await session.SendAsync("ROUT:CLOS (@3)", default);
        Assert.Equal(["ROUT:CLOS (@3)"], _link.Lines);
    }

    [Fact]
    public async Task After_a_cancelled_wait_the_session_goes_on_in_step()
    {
        await using var session = await IdentifiedAsync();
        using var cancel = new CancellationTokenSource();
        var given_up = session.QueryAsync("READ?", cancel.Token);
        await _link.NextLineAsync();
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => given_up);

        var next = session.QueryAsync("SYST:ERR?", default);
        await _time.ElapseAsync(Times.QuietTime);
        Assert.Equal("*IDN?", await _link.NextLineAsync());
        _link.Send($"+1.0E-03\n{Identity}\n");
        Assert.Equal("SYST:ERR?", await _link.NextLineAsync());
        _link.Send("0,\"No error\"\n");
        Assert.Equal("0,\"No error\"", await next);
    }

    // SCPI-1999, volume 2, 21.8.11: -410 and its kin are about the exchange of queries and answers; no command is refused by them.
    [Fact]
    public async Task That_a_given_up_query_was_interrupted_is_not_held_against_the_next_command()
    {
        await using var session = await IdentifiedAsync(retries: 1);
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        await _time.ElapseAsync(Times.QueryTimeout);
        await _time.ElapseAsync(Times.QuietTime);
        await AnswerAsync("*IDN?", Identity);
        await AnswerAsync("READ?", "+1.0E-03");
        await reply;

        var errors = session.SendAndCheckAsync("CONF:VOLT:AC 1", default);
        Assert.Equal("CONF:VOLT:AC 1", await _link.NextLineAsync());
        await AnswerAsync("SYST:ERR?", "-410,\"Query INTERRUPTED\"");
        await AnswerAsync("SYST:ERR?", "-222,\"Data out of range\"");
        await AnswerAsync("SYST:ERR?", "0,\"No error\"");
        Assert.Equal([-222], (await errors).Select(error => error.Number));
        Assert.Contains(_log.Lines, line => line.Contains("given up", StringComparison.Ordinal) && line.Contains("-410", StringComparison.Ordinal));

        // Once: an instrument that goes on to interrupt queries is odd, and is told of.
        var again = session.SendAndCheckAsync("CONF:VOLT:AC 1", default);
        Assert.Equal("CONF:VOLT:AC 1", await _link.NextLineAsync());
        await AnswerAsync("SYST:ERR?", "-410,\"Query INTERRUPTED\"");
        await AnswerAsync("SYST:ERR?", "0,\"No error\"");
        Assert.Equal([-410], (await again).Select(error => error.Number));
    }

    private async Task AnswerAsync(string query, string answer)
    {
        Assert.Equal(query, await _link.NextLineAsync());
        _link.Send($"{answer}\n");
    }

    [Fact]
    public async Task Bytes_that_came_unasked_are_dropped_and_logged()
    {
        await using var session = NewSession();
        _link.Send("Welcome to the meter\n");
        await ReadByTheSessionAsync();
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        _link.Send("+1.0E-03\n");
        Assert.Equal("+1.0E-03", await reply);
        Assert.Contains(_log.Lines, line => line.Contains("Welcome to the meter", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_echo_is_told_from_the_answer()
    {
        await using var session = NewSession();
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        _link.Send("READ?\r\n+1.0E-03\r\n");
        Assert.Equal("+1.0E-03", await reply);
    }

    [Fact]
    public async Task Two_callers_do_not_get_into_each_others_exchange()
    {
        await using var session = NewSession();
        var first = session.QueryAsync("A?", default);
        var second = session.QueryAsync("B?", default);
        Assert.Equal("A?", await _link.NextLineAsync());
        Assert.Single(_link.Lines);
        _link.Send("1\n");
        Assert.Equal("1", await first);
        Assert.Equal("B?", await _link.NextLineAsync());
        _link.Send("2\n");
        Assert.Equal("2", await second);
    }

    [Fact]
    public async Task A_broken_link_is_a_fault_that_says_so()
    {
        await using var session = NewSession();
        var reply = session.QueryAsync("READ?", default);
        await _link.NextLineAsync();
        _link.Break("the cable was pulled");
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => reply);
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("the cable was pulled", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_console_port_is_told_from_an_instrument()
    {
        await using var session = NewSession();
        var identity = session.IdentifyAsync(default);
        await _link.NextLineAsync();
        _link.Send("login:\n");
        Assert.Contains("login:", (await Assert.ThrowsAsync<BenchFaultException>(() => identity)).Found, StringComparison.Ordinal);
    }

    private ScpiSession NewSession(int retries = 2) => new(_link, new() { Exchange = Times with { Retries = retries } }, _time, _log);

    private async Task<ScpiSession> IdentifiedAsync(int retries = 2)
    {
        var session = NewSession(retries);
        var identity = session.IdentifyAsync(default);
        await _link.NextLineAsync();
        await _time.AwaitedAsync(Times.QueryTimeout);
        _link.Send($"{Identity}\n");
        await identity;
        return session;
    }

    private async Task TimeOutAsync(ScpiSession session, string query)
    {
        var late = session.QueryAsync(query, default);
        await _link.NextLineAsync();
        await _time.ElapseAsync(Times.QueryTimeout);
        await Assert.ThrowsAsync<BenchFaultException>(() => late);
    }

    // The session takes bytes off the link by itself; once it asks for more it has stored what came before.
    private Task ReadByTheSessionAsync() => _link.AllReadAsync();
}
