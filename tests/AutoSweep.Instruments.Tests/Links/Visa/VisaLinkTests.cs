using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Links.Visa;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Tests.Links.Visa;

/// <summary>Over the stand-in library, which notes what an instrument would complain about. Status and attribute numbers: VPP-4.3.2, appendix A,
/// as published copies of visa.h have them.</summary>
[Collection(VisaStandIn.Collection)]
public sealed class VisaLinkTests : IDisposable
{
    private const string Gpib = "GPIB0::22::INSTR";

    // For tests of silence. All else has the patience of a test: a machine that is busy elsewhere is no silent instrument.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(1);

    private readonly VisaStandIn? _visa = VisaStandIn.CanBeBuilt ? new() : null;

    public void Dispose() => _visa?.Dispose();

    private VisaStandIn Visa => _visa!;

    [CompiledTheory]
    [InlineData("GPIB0::22::INSTR")]
    [InlineData("TCPIP0::dmm.test::inst0::INSTR")]
    [InlineData("USB0::0x1234::0x5678::A001::INSTR")]
    [InlineData("visa:TCPIP0::dmm.test::5025::SOCKET")]
    [InlineData("visa:ASRL1::INSTR")]
    public async Task An_instrument_is_asked_and_answers_and_has_nothing_to_complain_about(string resource)
    {
        await using var meter = new LineInstrument(Identity);
        await using (var session = await OpenAsync(resource, meter))
        {
            Assert.Equal("M1", (await session.IdentifyAsync(default)).Model);
            await session.SendAsync("*RST", default);
            Assert.Equal("+1.2E-03", await session.QueryAsync("READ?", default));
        }

        await AllClosedAsync();
        Assert.Equal((0, 0), (Visa.Calls("unasked"), Visa.Calls("interrupted")));
    }

    [CompiledTheory]
    [InlineData("GPIB0::22::INSTR")]
    [InlineData("visa:TCPIP0::dmm.test::5025::SOCKET")]
    public async Task An_answer_that_comes_in_pieces_is_put_together(string resource)
    {
        await using var meter = new LineInstrument(Identity);
        Visa.InPieces(4); // every read but the last ends with VI_SUCCESS_MAX_CNT
        await using var session = await OpenAsync(resource, meter);
        Assert.Equal("Invented Instruments,M1,77,1.0", await session.QueryAsync("*IDN?", default));
        Assert.InRange(Visa.Calls("viRead"), 8, int.MaxValue);
    }

    [CompiledTheory]
    [InlineData("GPIB0::22::INSTR", true)]
    [InlineData("GPIB0::22::INSTR", false)]
    [InlineData("visa:TCPIP0::dmm.test::5025::SOCKET", true)]
    public async Task A_late_answer_is_never_taken_for_the_next_one(string resource, bool saysWhenItHasAnAnswer)
    {
        if (!saysWhenItHasAnAnswer)
            Visa.SayNothingInTheStatusByte();
        await using var meter = new LineInstrument(line => line == "READ?" ? null : Identity(line));
        await using var session = await OpenAsync(resource, meter);
        await session.IdentifyAsync(default);
        var later = meter.Later();
        var silence = await Assert.ThrowsAsync<BenchFaultException>(() => session.QueryAsync("READ?", default, Soon));
        Assert.Equal(BenchFault.NoAnswer, silence.Kind);
        later("+9.99E-01\n");
        Assert.Equal("2.5", await session.QueryAsync("FREQ?", default));
        Assert.Equal(0, Visa.Calls("interrupted"));
    }

    [CompiledFact]
    public async Task An_instrument_whose_status_byte_says_nothing_is_read_all_the_same()
    {
        await using var meter = new LineInstrument(Identity);
        Visa.SayNothingInTheStatusByte();
        await using var session = await OpenAsync(Gpib, meter);
        Assert.Equal("M1", (await session.IdentifyAsync(default)).Model);
        Assert.Equal("2.5", await session.QueryAsync("FREQ?", default));
    }

    [CompiledFact]
    public async Task An_instrument_without_a_status_byte_is_read_all_the_same()
    {
        await using var meter = new LineInstrument(Identity);
        Visa.FailNext("viReadSTB", unchecked((int)0xBFFF0067)); // VI_ERROR_NSUP_OPER
        await using var session = await OpenAsync(Gpib, meter);
        Assert.Equal("M1", (await session.IdentifyAsync(default)).Model);
    }

    [CompiledTheory]
    [InlineData("GPIB0::22::INSTR", false)]
    [InlineData("GPIB0::22::INSTR", true)]
    [InlineData("visa:TCPIP0::dmm.test::5025::SOCKET", false)]
    public async Task A_connection_that_is_lost_is_a_link_that_broke(string resource, bool atOnce)
    {
        await using var meter = new LineInstrument(Identity);
        await using var session = await OpenAsync(resource, meter);
        await session.IdentifyAsync(default);
        meter.Unplug();
        if (atOnce)
            Visa.FailNext("viWrite", unchecked((int)0xBFFF00A6)); // VI_ERROR_CONN_LOST
        var lost = await Assert.ThrowsAsync<BenchFaultException>(() => session.QueryAsync("READ?", default));
        Assert.Equal(BenchFault.NotReachable, lost.Kind);
        Assert.Contains("the connection was lost (VI_ERROR_CONN_LOST)", lost.Found, StringComparison.Ordinal);
        await Assert.ThrowsAsync<BenchFaultException>(() => session.SendAsync("*RST", default));
    }

    [CompiledTheory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_wait_that_is_given_up_ends_at_once_and_the_next_message_goes_out(bool saysWhenItHasAnAnswer)
    {
        if (!saysWhenItHasAnAnswer)
            Visa.SayNothingInTheStatusByte();
        var asked = new TaskCompletionSource();
        await using var meter = new LineInstrument(line =>
        {
            if (line != "READ?")
                return Identity(line);
            asked.TrySetResult();
            return null;
        });
        await using var session = await OpenAsync(Gpib, meter);
        await session.IdentifyAsync(default);
        using var cancel = new CancellationTokenSource();
        // An hour: nothing but the interruption can end the library's read in the time of this test.
        var reading = session.QueryAsync("READ?", cancel.Token, TimeSpan.FromHours(1));
        await asked.Task.WaitAsync(Patience.Limit, TimeProvider.System);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        Assert.Equal("2.5", await session.QueryAsync("FREQ?", default).WaitAsync(Patience.Limit, TimeProvider.System));
        Assert.Equal((0, true), (Visa.Calls("interrupted"), Visa.Calls("viClear") > 0));
    }

    [CompiledFact]
    public async Task Closing_ends_a_read_that_waits()
    {
        await using var meter = new LineInstrument(line => line == "READ?" ? null : Identity(line));
        Visa.SayNothingInTheStatusByte();
        await using var link = await LinkAsync(Gpib, meter);
        await link.WriteQueryAsync("*IDN?\n"u8.ToArray(), Patience.Limit, default);
        await link.ReadAsync(new byte[64], default);
        await link.WriteQueryAsync("READ?\n"u8.ToArray(), TimeSpan.FromHours(1), default);
        // The library's read is under way: the first one was *IDN?'s.
        await Patience.UntilAsync(() => Visa.Calls("reading") >= 2);
        await link.DisposeAsync();
        await AllClosedAsync();
    }

    [CompiledFact]
    public async Task Nothing_is_read_before_something_is_asked()
    {
        await using var meter = new LineInstrument(Identity);
        await using var link = await LinkAsync(Gpib, meter);
        await link.WriteAsync("*RST\n"u8.ToArray(), default);
        await link.WriteAsync("CONF:VOLT:AC\n"u8.ToArray(), default);
        await link.DisposeAsync();
        Assert.Equal((2, 0), (Visa.Calls("viWrite"), Visa.Calls("viRead")));
    }

    [CompiledFact]
    public async Task A_serial_line_gets_its_settings_as_the_standard_numbers_them()
    {
        await using var meter = new LineInstrument(Identity);
        Visa.Add("ASRL1::INSTR", meter.Port);
        var serial = new SerialSettings
        {
            Baud = 4800, DataBits = 7, Parity = SerialParity.Even, StopBits = 2, Handshake = SerialHandshake.RtsCts,
        };
        await using var link = await new LinkOpener(TimeProvider.System, Visa.Names).OpenAsync(
            ResourceName.Parse("visa:ASRL1::INSTR"), new(serial) { ReplyTerminator = '\r' }, default);
        (uint Id, ulong Value)[] expected =
        [
            (0x3FFF0021, 4800), (0x3FFF0022, 7), (0x3FFF0023, 2), (0x3FFF0024, 20), (0x3FFF0025, 2), (0x3FFF00B3, 2),
            (0x3FFF0018, '\r'), (0x3FFF0038, 1),
        ];
        Assert.Equal(expected, expected.Select(attribute => (attribute.Id, Visa.Attribute(attribute.Id))));
    }

    private static string? Identity(string line) => line switch
    {
        "*IDN?" => "Invented Instruments,M1,77,1.0\n",
        "READ?" => "+1.2E-03\n",
        "FREQ?" => "2.5\n",
        _ => null,
    };

    // Closing leaves a call that does not return in time to itself: on a busy machine that is any call.
    private Task AllClosedAsync() => Patience.UntilAsync(() => Visa.OpenSessions == 0);

    private async Task<ScpiSession> OpenAsync(string resource, LineInstrument meter)
    {
        var exchange = new ExchangeOptions { QueryTimeout = Patience.Limit, Retries = 1 };
        var link = await LinkAsync(resource, meter);
        return new(link, new() { Exchange = exchange }, TimeProvider.System, NullLogger.Instance);
    }

    private Task<ILink> LinkAsync(string resource, LineInstrument meter)
    {
        Visa.Add(resource.Replace("visa:", "", StringComparison.Ordinal), meter.Port);
        return new LinkOpener(TimeProvider.System, Visa.Names).OpenAsync(ResourceName.Parse(resource), new(new()), default);
    }
}
