using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Drivers.Tests;

/// <summary>What every driver does when the meter is not as it should be; there is no code for a single one. The meter's words are those of
/// the driver's own sessions.</summary>
public sealed class EveryDriversBehaviourTests
{
    // SCPI-1999, 7.2.1.5: not a number. It is no session's answer, so an outcome that came of it would show.
    private const string NotThisAnswer = "9.91E37";

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_meter_of_another_family_is_refused_before_anything_is_set(string driver, string call)
    {
        await using var bench = new SceneBench(DriverScene.Of(driver, call));
        bench.Meter.Identity = "Other Works,X-1,0,1.0";
        if (bench.Scene.Driver.Drives(InstrumentIdentity.TryParse(bench.Meter.Identity)!))
        {
            // A driver that takes any identity still names what it has found.
            bench.Meter.Identity = "+1.00000E+00";
            Assert.Contains("+1.00000E+00", (await FaultAsync(bench, BenchFault.NoAnswer)).Found, StringComparison.Ordinal);
        }
        else
            Assert.Contains("Other Works,X-1", (await FaultAsync(bench, BenchFault.WrongIdentity)).Found, StringComparison.Ordinal);
        Assert.All(bench.Meter.Sent, sent => Assert.Equal("*IDN?", sent));
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task An_overload_is_told_and_the_next_reading_is_a_value_again(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        // A counter's overload need not be printed anywhere; SCPI's own (SCPI-1999, 7.2.1.4) must be understood by all.
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue(bench.Scene.Overload ?? "+9.90000000E+37");
        Assert.Equal("overload", await bench.ReadAsync());
        bench.Meter.Readings.Enqueue(bench.Scene.Reply);
        bench.Meter.Readings.Dequeue();
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_meter_that_says_nothing_at_all_is_a_fault(string driver, string call)
    {
        await using var bench = new SceneBench(DriverScene.Of(driver, call));
        bench.Meter.Unanswered.Add("*IDN?");
        Assert.Contains("*IDN?", (await FaultAsync(bench, BenchFault.NoAnswer)).Found, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_meter_that_falls_silent_is_a_fault_and_is_read_again_when_it_is_back(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Unanswered.Add(bench.Scene.Query);
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => bench.ReadAsync());
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Contains(bench.Scene.Query, fault.Found, StringComparison.Ordinal);
        bench.Meter.Unanswered.Clear();
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_garbled_answer_is_asked_for_again(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue($"\u00b1{bench.Scene.Reply}");
        bench.Meter.Readings.Enqueue(bench.Scene.Reply);
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
        Assert.Equal(2, bench.Meter.Sent.Count(sent => sent == bench.Scene.Query));
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task An_answer_that_stays_garbled_is_a_fault_and_no_number(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue($"\u00b1{bench.Scene.Reply}");
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => bench.ReadAsync());
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task Words_that_are_no_reading_are_no_number(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue("what?");
        Assert.Equal("invalid", await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task An_answer_that_comes_byte_by_byte_is_the_same(string driver, string call)
    {
        await using var bench = new SceneBench(DriverScene.Of(driver, call));
        bench.Meter.PieceBytes = 1;
        await bench.OpenAsync();
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_line_that_is_merged_behind_an_answer_is_not_taken_for_the_next(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Behind = NotThisAnswer + "\r\n";
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task A_line_that_came_unasked_is_not_taken_for_the_answer(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        await bench.Meter.SayUnaskedAsync(NotThisAnswer);
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task An_answer_that_comes_after_its_time_is_not_taken_for_the_next(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue(NotThisAnswer);
        bench.Meter.Readings.Enqueue(bench.Scene.Reply);
        bench.Meter.IsLate = true;
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverScene.All), MemberType = typeof(DriverScene))]
    public async Task After_a_cancelled_reading_the_next_one_is_right(string driver, string call)
    {
        await using var bench = await SceneBench.OpenAsync(driver, call);
        bench.Meter.Readings.Clear();
        bench.Meter.Readings.Enqueue(NotThisAnswer);
        bench.Meter.Readings.Enqueue(bench.Scene.Reply);
        (bench.Meter.IsLate, bench.Meter.Strikes) = (true, false);
        using var cancelling = new CancellationTokenSource();
        var reading = bench.ReadAsync(cancelling.Token);
        await bench.Meter.WithheldAsync();
        await cancelling.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        Assert.Equal(bench.Scene.Outcome, await bench.ReadAsync());
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Sessions), MemberType = typeof(DriverFolders))]
    public async Task Where_a_comma_is_the_decimal_mark_every_word_is_the_same(string driver, string session)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new("de-DE");
            Assert.Equal("1,5", $"{1.5}");
            await SessionReplay.PlayAsync(DriverFolders.Session(driver, session), DriverLibrary.BesideProgram.Read(driver));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static async Task<BenchFaultException> FaultAsync(SceneBench bench, BenchFault kind)
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(bench.OpenAsync);
        Assert.Equal(kind, fault.Kind);
        return fault;
    }
}
