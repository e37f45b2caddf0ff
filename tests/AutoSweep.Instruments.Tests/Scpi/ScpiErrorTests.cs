using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Tests.Scpi;

public sealed class ScpiErrorTests
{
    [Theory] // SCPI-1999, volume 2, 21.8: a number, a comma, a quoted text
    [InlineData("-113,\"Undefined header\"", -113, "Undefined header")]
    [InlineData("+0,\"No error\"", 0, "No error")]
    [InlineData("0", 0, "No error")]
    [InlineData("-222", -222, "Data out of range")]
    [InlineData("-221,\"Settings conflict;a \"\"quoted\"\" word\"", -221, "Settings conflict;a \"quoted\" word")]
    [InlineData("101, \"Watchdog expired\"", 101, "Watchdog expired")]
    [InlineData("-410,Query INTERRUPTED", -410, "Query INTERRUPTED")]
    public void A_queue_entry_is_read(string reply, int number, string text) =>
        Assert.Equal(new ScpiError(number, text), ScpiError.TryParse(reply));

    [Theory]
    [InlineData("")]
    [InlineData("No error")]
    [InlineData("+1.25E-03")]
    [InlineData("\"x\",1")]
    public void What_is_none_is_not_taken_for_one(string reply) => Assert.Null(ScpiError.TryParse(reply));

    // The file: numbers and texts of SCPI-1999, volume 2, 21.8, checked against the public header error.h of scpi-parser.
    [Fact]
    public void The_texts_are_those_of_the_standard()
    {
        var standard = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "scpi-1999-errors.tsv"))
            .Where(line => !line.StartsWith('#'))
            .Select(line => line.Split('\t'))
            .ToDictionary(fields => int.Parse(fields[0], CultureInfo.InvariantCulture), fields => fields[1]);
        var known = Enumerable.Range(-1000, 2000).Where(number => StandardErrors.TextOf(number) is not null).ToArray();
        Assert.True(known.Length > 55);
        Assert.All(known, number => Assert.Equal(standard[number], StandardErrors.TextOf(number)));
    }

    [Fact]
    public async Task The_queue_is_read_until_it_is_empty()
    {
        Queue<string> queue = new(["-113,\"Undefined header\"", "-222,\"Data out of range\""]);
        await using var session = SessionWith(_ => queue.TryDequeue(out var error) ? error : "+0,\"No error\"");
        Assert.Equal([-113, -222], (await session.DrainErrorsAsync(default)).Select(error => error.Number));
        Assert.Empty(await session.DrainErrorsAsync(default));
    }

    [Fact]
    public async Task A_queue_that_repeats_for_ever_is_left_after_fifty()
    {
        await using var session = SessionWith(_ => "-350,\"Queue overflow\"");
        Assert.Equal(50, (await session.DrainErrorsAsync(default)).Count);
    }

    [Fact]
    public async Task A_queue_that_answers_nonsense_is_a_fault()
    {
        await using var session = SessionWith(_ => "ready");
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => session.DrainErrorsAsync(default));
        Assert.Contains("\"ready\"", fault.Found, StringComparison.Ordinal);
    }

    private static ScpiSession SessionWith(Func<string, string> answer) =>
        new(new FakeLink { Answer = line => answer(line) + "\n" }, new(), new ObservedTime(), NullLogger.Instance);
}
