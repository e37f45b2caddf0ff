using System.Collections.Concurrent;
using AutoSweep.Core;
using AutoSweep.Instruments.Discovery;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Discovery;

public sealed class InstrumentInquiryTests : IDisposable
{
    private readonly DirectoryInfo _drivers = Directory.CreateTempSubdirectory("autosweep-drivers-");
    private readonly ConcurrentQueue<string> _heard = [];

    // Stands still unless a test moves it: what is answered is never too late, however busy the machine is.
    private readonly ObservedTime _time = new();

    private static readonly TimeSpan OneTry = TimeSpan.FromSeconds(1);

    public InstrumentInquiryTests()
    {
        WriteDriver("plain-meter", "Invented*", "M?", """{ }""");
        WriteDriver("old-meter", "Invented*", "OLD*", """{ "terminator": "cr", "replyTerminator": "cr", "serial": { "baud": 1200 } }""");
    }

    public void Dispose() => _drivers.Delete(recursive: true);

    [Fact]
    public async Task Who_answers_is_told_with_the_drivers_that_fit_and_nothing_else_is_sent()
    {
        await using var meter = new LineInstrument(Heard("Invented Instruments,M1,77,1.0\n"));
        var answer = await AskAsync($"127.0.0.1:{meter.Port}");
        Assert.Equal("Invented Instruments,M1,77,1.0", answer.Identity?.ToString());
        Assert.Equal(["plain-meter"], answer.Drivers);
        Assert.Equal(["*IDN?"], _heard);
    }

    [Fact]
    public async Task An_instrument_that_no_driver_fits_is_told_all_the_same()
    {
        await using var meter = new LineInstrument(Heard("Somebody,X9,1,2\n"));
        var answer = await AskAsync($"127.0.0.1:{meter.Port}");
        Assert.Equal("X9", answer.Identity?.Model);
        Assert.Empty(answer.Drivers);
    }

    [Fact]
    public async Task Silence_is_no_fault()
    {
        await using var meter = new LineInstrument(Heard(null));
        var asking = AskAsync($"127.0.0.1:{meter.Port}");
        await _time.ElapseAsync(OneTry);
        await _time.ElapseAsync(OneTry); // LF, then the old meter's CR
        var answer = await asking;
        Assert.Null(answer.Identity);
        Assert.Contains("no answer", answer.Trouble, StringComparison.Ordinal);
        Assert.All(_heard, line => Assert.Equal("*IDN?", line));
    }

    [Fact]
    public async Task A_resource_that_cannot_be_opened_says_why()
    {
        var answer = await AskAsync("ASRL/dev/ttyNotThere::INSTR");
        Assert.Contains("no serial port /dev/ttyNotThere", answer.Trouble, StringComparison.Ordinal);
    }

    [PtyFact]
    public async Task An_instrument_on_a_serial_line_is_told_with_the_lines_settings()
    {
        using var line = new PtyPair();
        var served = line.ServeAsync(Heard("Invented Instruments,M1,77,1.0\n"));
        var answer = await AskAsync(line.Port);
        Assert.Equal(("M1", "9600 8N1, LF"), (answer.Identity?.Model, answer.Line));
        line.Dispose();
        await served;
    }

    [Fact]
    public async Task An_instrument_that_wants_other_line_ends_is_asked_as_its_driver_says()
    {
        var first = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var meter = new LineInstrument(line =>
        {
            _heard.Enqueue(line);
            return first.TrySetResult() ? null : "Invented Instruments,OLD1,77,1.0\r";
        });
        var answer = AskAsync($"127.0.0.1:{meter.Port}");
        await first.Task.WaitAsync(Patience.Limit, TimeProvider.System);
        _time.Advance(OneTry); // the wait for an answer begins before the question goes out
        Assert.Equal(["old-meter"], (await answer).Drivers);
    }

    [Fact]
    public async Task A_name_with_a_slip_is_a_fault() =>
        await Assert.ThrowsAsync<BenchFaultException>(() => AskAsync("TCPIQ::127.0.0.1"));

    private Func<string, string?> Heard(string? answer) => line =>
    {
        _heard.Enqueue(line);
        return answer;
    };

    private Task<InquiryResult> AskAsync(string resource) =>
        new InstrumentInquiry(new() { Drivers = new(_drivers.FullName), Time = _time }).AskAsync(resource, default);

    private void WriteDriver(string name, string maker, string model, string link)
    {
        Directory.CreateDirectory(Path.Combine(_drivers.FullName, name));
        File.WriteAllText(Path.Combine(_drivers.FullName, name, "driver.json"), $$"""
            {
              "name": "{{name}}", "title": "a meter for tests",
              "identity": [ { "maker": "{{maker}}", "model": "{{model}}" } ],
              "link": {{link}},
              "setUp": [],
              "frequency": { "setUp": [], "apertureSeconds": 0.1, "settleSeconds": 0.5, "source": "test", "read": "READ?" }
            }
            """);
    }
}
