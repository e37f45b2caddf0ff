using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.StrictJson;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests;

/// <summary>The two entries, over real sockets.</summary>
public sealed class InstrumentBenchTests : IDisposable
{
    // Stands still unless a test moves it: what is answered is never too late, however busy the machine is.
    private readonly ObservedTime _time = new();

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("autosweep-bench-");

    public InstrumentBenchTests()
    {
        Write(Path.Combine(_folder.CreateSubdirectory("small").FullName, "driver.json"), Drivers.Small with
        {
            Level = Drivers.Small.Level! with { Bandwidths = [Drivers.Small.Level!.Bandwidths[0] with { SettleSeconds = 0 }] },
        });
        Write(CalibrationFile, Calibrations.Ideal);
    }

    private string CalibrationFile => Path.Combine(_folder.FullName, "F-0007.json");

    private InstrumentBenchOptions Options => new() { Drivers = new(_folder.FullName), Time = _time };

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_meter_is_opened_in_one_call()
    {
        var simple = new SimpleMeter { Readings = new(["+5.372E-03"]) };
        await using var server = new TcpInstrument(simple.Link.Answer!);
        await using var meter = await InstrumentBench.OpenMeterAsync(server.Resource, "small", Options, default);
        await meter.PrepareLevelAsync(0.01, 500, default);
        Assert.Equal("M1", meter.Identity.Model);
        Assert.Equal(0.005372, (await meter.ReadLevelAsync(default)).Value);
    }

    [Fact]
    public async Task A_fixture_is_opened_in_one_call_and_left_with_every_relay_open()
    {
        var box = new FixtureBox();
        await using var server = new TcpInstrument(box.Link.Answer!);
        await using (var fixture = await InstrumentBench.OpenFixtureAsync(server.Resource, CalibrationFile, Options, default))
            Assert.Equal(new Capacitance(47_150), await fixture.SetAsync(Capacitance.FromNanofarads(47.13), default));
        Assert.Empty(box.Closed);
    }

    [PtyFact]
    public async Task A_fixture_on_a_serial_line_is_opened_by_its_port()
    {
        var box = new FixtureBox();
        using var line = new PtyPair();
        var served = line.ServeAsync(box.Link.Answer!);
        await using (var fixture = await InstrumentBench.OpenFixtureAsync($"ASRL{line.Port}::INSTR", CalibrationFile, Options, default))
        {
            await fixture.SetAsync(Capacitance.FromNanofarads(100.15), default);
            Assert.Equal([13], box.Closed);
        }

        await served;
        Assert.Empty(box.Closed);
    }

    [PtyFact]
    public async Task A_fixture_whose_cable_is_pulled_is_not_reachable_and_can_still_be_closed()
    {
        var box = new FixtureBox();
        using var line = new PtyPair();
        var served = line.ServeAsync(message => message == "ROUT:CLOS (@13)" ? Pulled(line) : box.Link.Answer!(message));
        var fixture = await InstrumentBench.OpenFixtureAsync($"ASRL{line.Port}::INSTR", CalibrationFile, Options, default);
        foreach (var _ in (int[])[1, 2])
        {
            // The break itself must end it: no time-out strikes on a clock that stands still.
            var fault = await Assert.ThrowsAsync<BenchFaultException>(() =>
                fixture.SetAsync(Capacitance.FromNanofarads(100.15), default).WaitAsync(Patience.Limit, TimeProvider.System));
            Assert.Equal(BenchFault.NotReachable, fault.Kind);
            Assert.Contains("cable", fault.WhatToDo, StringComparison.Ordinal);
        }

        await fixture.DisposeAsync().AsTask().WaitAsync(Patience.Limit, TimeProvider.System);
        await served;
    }

    [Fact]
    public async Task A_meter_that_answers_nothing_is_a_fault_and_the_link_is_closed()
    {
        await using var server = new TcpInstrument(_ => null);
        var exchange = new ExchangeOptions { Retries = 1 };
        var opening = InstrumentBench.OpenMeterAsync(server.Resource, "small", Options with { Exchange = exchange }, default);
        await _time.ElapseAsync(exchange.QueryTimeout);
        await _time.ElapseAsync(exchange.QuietTime);
        await _time.ElapseAsync(exchange.QueryTimeout); // the identity that would bring both back into step
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => opening);
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Contains(server.Resource, fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_driver_that_is_not_there_is_told_before_anything_is_opened() =>
        Assert.Equal(BenchFault.BadFile, (await Assert.ThrowsAsync<BenchFaultException>(() =>
            InstrumentBench.OpenMeterAsync("TCPIP::127.0.0.1::1::SOCKET", "none", Options, default))).Kind);

    private static string? Pulled(PtyPair line)
    {
        line.Dispose();
        return null;
    }

    private static void Write<T>(string path, T value) =>
        File.WriteAllText(path, JsonSerializer.Serialize(value, StrictJsonOptions.Shared));
}
