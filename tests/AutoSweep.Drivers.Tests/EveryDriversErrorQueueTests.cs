using System.Text.RegularExpressions;
using AutoSweep.Core;
using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Drivers.Tests;

/// <summary>What every driver with an error queue makes of refused commands; there is no code for a single one.</summary>
public sealed class EveryDriversErrorQueueTests
{
    public static TheoryData<string, string> Queued
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var row in DriverScene.All)
                if (DriverLibrary.BesideProgram.Read((string)row[0]).ErrorQuery is not null)
                    data.Add((string)row[0], (string)row[1]);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Queued))]
    public async Task What_the_queue_held_from_before_is_read_out_at_the_start(string driver, string call)
    {
        await using var bench = new SceneBench(DriverScene.Of(driver, call));
        bench.Meter.Errors.Enqueue(bench.Scene.Refusal);
        bench.Meter.Errors.Enqueue(bench.Scene.Refusal);
        await bench.OpenAsync();
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
        Assert.Empty(bench.Meter.Errors);
    }

    [Theory]
    [MemberData(nameof(Queued))]
    public async Task A_refused_optional_command_is_left_out_from_then_on(string driver, string call)
    {
        foreach (var message in await SentAsync(driver, call, required: false))
        {
            await using var bench = new SceneBench(DriverScene.Of(driver, call));
            bench.Meter.Refused.Add(message);
            await bench.OpenAsync();
            Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
            // A silence makes the driver send its whole set-up again: the refused one no more.
            bench.Meter.Unanswered.Add(bench.Scene.Query);
            await Assert.ThrowsAsync<BenchFaultException>(() => bench.ReadAsync());
            bench.Meter.Unanswered.Clear();
            Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
            Assert.Single(bench.Meter.Sent, sent => sent == message);
        }
    }

    [Theory]
    [MemberData(nameof(Queued))]
    public async Task A_refused_required_command_stops_with_the_command_and_the_meters_words(string driver, string call)
    {
        var required = await SentAsync(driver, call, required: true);
        Assert.NotEmpty(required);
        foreach (var message in required)
        {
            await using var bench = new SceneBench(DriverScene.Of(driver, call));
            bench.Meter.Refused.Add(message);
            var fault = await Assert.ThrowsAsync<BenchFaultException>(async () =>
            {
                await bench.OpenAsync();
                await bench.ReadAsync();
            });
            Assert.Equal(BenchFault.WrongIdentity, fault.Kind);
            Assert.Contains(message, fault.Found, StringComparison.Ordinal);
            Assert.Contains(bench.Scene.Refusal.Split(',')[0], fault.Found, StringComparison.Ordinal);
        }
    }

    /// <summary>The commands that opening and reading send, as they are sent.</summary>
    private static async Task<IReadOnlyList<string>> SentAsync(string driver, string call, bool required)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        await bench.ReadAsync();
        var read = bench.Scene.Driver;
        var patterns = ((IEnumerable<DriverCommand>)
            [.. read.Link.SerialSetUp, .. read.SetUp, .. read.Level?.SetUp ?? [], .. read.Frequency?.SetUp ?? [], .. read.Capacitance?.SetUp ?? []])
            .ToLookup(command => command.Required, command => new Regex($"^{Regex.Replace(Regex.Escape(command.Command), @"\\\{[a-z]+}", ".+")}$"));
        return [.. bench.Meter.Sent.Distinct().Where(sent => patterns[required].Any(pattern => pattern.IsMatch(sent)) && !patterns[!required].Any(pattern => pattern.IsMatch(sent)))];
    }
}
