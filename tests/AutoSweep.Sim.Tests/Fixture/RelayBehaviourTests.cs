using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Fixture;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Fixture;

/// <summary>What relays and watchdog do over time.</summary>
public class RelayBehaviourTests
{
    private static readonly FixtureDefinition Parts = new()
    {
        Serial = "X", StrayPicofarads = 50, LossTangent = 0, ReleaseMilliseconds = 3, BounceMilliseconds = 5,
        Relays = [Relay(100), Relay(200), Relay(400)],
    };

    [Fact]
    public void Capacitance_is_stray_plus_what_is_closed()
    {
        var bank = new RelayBank(Parts);
        Assert.Equal(50e-12, bank.Farads, 1e-20);
        bank.Drive(0b101, TimeSpan.Zero);
        Run(bank, 1);
        Assert.Equal(550e-12, bank.Farads, 1e-20);
    }

    [Fact]
    public void One_set_has_opened_before_the_other_closes()
    {
        var bank = new RelayBank(Parts);
        bank.Drive(0b011, TimeSpan.Zero);
        Run(bank, 1);
        bank.Drive(0b100, TimeSpan.FromSeconds(1));
        var seen = new List<double> { bank.Farads };
        while (bank.NextChange(TimeSpan.FromSeconds(2)) is { } change)
        {
            bank.Take(change);
            seen.Add(bank.Farads);
        }

        Assert.Equal([350e-12, 50e-12, 450e-12], seen.Select(farads => Math.Round(farads, 14)));
        Assert.Equal(TimeSpan.FromSeconds(1.008), bank.SettledAt);
    }

    [Fact]
    public async Task Opc_answers_only_when_the_last_relay_has_stopped_bouncing()
    {
        using var bench = new TestBench();
        var before = bench.Clock.Now;
        await bench.FixtureAsync("ROUT:CLOS (@1);*OPC?");
        Assert.Equal(5, (bench.Clock.Now - before).TotalMilliseconds, 1e-3);
    }

    [Fact]
    public async Task Cycles_count_each_operation()
    {
        using var bench = new TestBench();
        await bench.FixtureAsync("ROUT:CLOS (@1)");
        await bench.FixtureAsync("ROUT:OPEN (@1);CLOS (@2)");
        await bench.FixtureAsync("ROUT:CLOS (@2)");
        Assert.Equal("2,1,0", await bench.FixtureAsync("DIAG:REL:CYCL? (@1:3)"));
    }

    [Fact]
    public async Task The_watchdog_opens_every_relay_once_and_queues_its_error()
    {
        using var bench = new TestBench();
        await bench.FixtureAsync("SYST:WATC 5;:ROUT:CLOS (@1:16);*OPC?");
        var closed = bench.Farads;
        await bench.PassAsync(4.9);
        Assert.Equal(closed, bench.Farads);
        await bench.PassAsync(0.2);
        Assert.Equal(bench.Definition.Fixture.StrayPicofarads * 1e-12, bench.Farads, 1e-18);
        await bench.PassAsync(100);
        Assert.Equal("101,\"Watchdog expired\"", await bench.FixtureAsync("SYST:ERR?"));
        Assert.Equal("0,\"No error\"", await bench.FixtureAsync("SYST:ERR?"));
        Assert.Equal("(@)", await bench.FixtureAsync("ROUT:CLOS:STAT?"));
    }

    [Fact]
    public async Task Any_message_feeds_the_watchdog()
    {
        using var bench = new TestBench();
        await bench.FixtureAsync("SYST:WATC 5;:ROUT:CLOS (@4)");
        for (var i = 0; i < 5; i++)
        {
            await bench.PassAsync(4);
            Assert.Equal("(@4)", await bench.FixtureAsync("ROUT:CLOS:STAT?"));
        }
    }

    [Fact]
    public async Task A_reset_opens_all_switches_the_watchdog_off_and_keeps_the_errors()
    {
        using var bench = new TestBench();
        await bench.FixtureAsync("SYST:WATC 5;:ROUT:CLOS (@1)");
        await bench.FixtureAsync("FOO");
        await bench.FixtureAsync("*RST");
        Assert.Equal("(@);0.0;-113,\"Undefined header\"", await bench.FixtureAsync("ROUT:CLOS:STAT?;:SYST:WATC?;ERR?"));
    }

    private static RelayDefinition Relay(double picofarads) => new() { NominalPicofarads = picofarads, Picofarads = picofarads };

    private static void Run(RelayBank bank, double untilSeconds)
    {
        while (bank.NextChange(TimeSpan.FromSeconds(untilSeconds)) is { } change) bank.Take(change);
    }
}
