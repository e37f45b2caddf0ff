using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class BenchWiringFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_is_left_out_has_its_default()
    {
        var wiring = Read("""{ "format": 1, "meter": "TCPIP::192.0.2.10::5025::SOCKET" }""");

        Assert.Equal("TCPIP::192.0.2.10::5025::SOCKET", wiring.Meter);
        Assert.Equal("scpi-dmm", wiring.MeterDriver);
        Assert.Equal(1, wiring.AmplifierGain);
        Assert.Equal((null, "scpi-lcr", 0), (wiring.CapacitanceMeter, wiring.CapacitanceMeterDriver, wiring.CapacitanceMeterLeadsPicofarads));
        Assert.Null(wiring.Fixture);
        Assert.Null(wiring.SettleSeconds);
    }

    [Fact]
    public void The_calibration_stands_beside_the_wiring() =>
        Assert.Equal(_folder.File("box.json"), Read("""{ "format": 1, "calibration": "box.json" }""").Calibration);

    [Fact]
    public void A_calibration_with_a_full_path_is_taken_as_it_is() =>
        Assert.Equal("/shop/box.json", Read("""{ "format": 1, "calibration": "/shop/box.json" }""").Calibration);

    [Theory]
    [InlineData("""{ "format": 1, "metre": "x" }""", "metre")]
    [InlineData("""{ "format": 1, "amplifierGain": 0 }""", "amplifierGain")]
    [InlineData("""{ "format": 1, "settleSeconds": 61 }""", "settleSeconds")]
    [InlineData("""{ "format": 2 }""", "format")]
    [InlineData("""{ "format": 1, "amplifierGain": "20" }""", "amplifierGain")]
    [InlineData("""{ "format": 1, """, "bench.json")]
    public void What_cannot_be_used_is_named(string text, string named)
    {
        var fault = Assert.Throws<BenchFaultException>(() => Read(text));

        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains(named, fault.Found, StringComparison.Ordinal);
        Assert.NotEqual("", fault.WhatToDo);
    }

    [Fact]
    public void A_file_that_is_not_there_is_a_bad_file() =>
        Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(() => BenchWiringFile.Read(_folder.File("none.json"))).Kind);

    private BenchWiring Read(string text)
    {
        var path = _folder.File("bench.json");
        File.WriteAllText(path, text);
        return BenchWiringFile.Read(path);
    }
}
