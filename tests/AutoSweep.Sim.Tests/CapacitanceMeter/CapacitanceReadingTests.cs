using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.CapacitanceMeter;

/// <summary>What the LCR meter shows of what is on its clips. Closed forms: parallel capacitances add, and so do their losses.</summary>
public class CapacitanceReadingTests
{
    [Fact]
    public async Task It_measures_the_boxs_stray_and_its_relays()
    {
        using var bench = new CapacitanceBench(CapacitanceBench.Exact);
        await bench.SetUpAsync();
        var box = bench.Definition.Fixture;
        Assert.Equal(box.StrayPicofarads, (await bench.ReadAsync()).Picofarads, 1e-5 * box.StrayPicofarads);
        await bench.FixtureAsync("ROUT:CLOS (@3,16);*OPC?");
        var truth = box.StrayPicofarads + box.Relays[2].Picofarads + box.Relays[15].Picofarads;
        var (picofarads, dissipation) = await bench.ReadAsync();
        Assert.Equal(truth, picofarads, 1e-5 * truth);
        Assert.Equal(box.LossTangent, dissipation, 1e-8);
    }

    [Fact]
    public async Task Two_parts_add_up_and_so_do_their_losses()
    {
        using var bench = new CapacitanceBench(CapacitanceBench.Exact);
        await bench.SetUpAsync();
        bench.Clips.Put([1, 2]);
        var (picofarads, dissipation) = await bench.ReadAsync();
        Assert.Equal(101_230 + 46_500, picofarads, 1.0);
        Assert.Equal(((101_230 * 0.001) + (46_500 * 0.003)) / (101_230 + 46_500), dissipation, 1e-6);
    }

    [Fact]
    public async Task Open_clips_show_next_to_nothing()
    {
        using var bench = new CapacitanceBench();
        await bench.SetUpAsync();
        bench.Clips.TakeOff();
        Assert.InRange((await bench.ReadAsync()).Picofarads, -0.2, 0.2);
    }

    [Fact]
    public async Task Without_the_open_correction_the_leads_are_measured_too_and_a_new_correction_takes_them_off()
    {
        using var bench = new CapacitanceBench(definition => CapacitanceBench.Exact(definition) with
        {
            CapacitanceMeter = CapacitanceBench.Exact(definition).CapacitanceMeter with { OpenCorrectionPicofarads = 0 },
        });
        await bench.SetUpAsync();
        bench.Clips.TakeOff();
        Assert.Equal(10, (await bench.ReadAsync()).Picofarads, 1e-3);
        await bench.AskAsync("CORR:OPEN");
        Assert.Equal(0, (await bench.ReadAsync()).Picofarads, 1e-3);
        await bench.AskAsync("CORR:OPEN:STAT OFF");
        Assert.Equal(10, (await bench.ReadAsync()).Picofarads, 1e-3);
    }

    [Fact]
    public async Task A_units_gain_error_is_in_every_reading()
    {
        using var bench = new CapacitanceBench(definition => CapacitanceBench.Exact(definition) with
        {
            CapacitanceMeter = CapacitanceBench.Exact(definition).CapacitanceMeter with { GainErrorPercent = 0.05 },
        });
        await bench.SetUpAsync();
        bench.Clips.Put([1]);
        Assert.Equal(101_230 * 1.0005, (await bench.ReadAsync()).Picofarads, 1.0);
    }

    [Theory]
    [InlineData(nameof(RelayFault.StuckOpen), "ROUT:CLOS (@9);*OPC?", 0)]
    [InlineData(nameof(RelayFault.StuckClosed), "ROUT:OPEN:ALL;*OPC?", 1)]
    public async Task A_stuck_contact_does_as_it_likes_and_the_read_back_knows_nothing_of_it(string name, string message, int there)
    {
        var fault = Enum.Parse<RelayFault>(name);
        using var bench = new CapacitanceBench(definition => WithFault(definition, fault));
        await bench.SetUpAsync();
        await bench.FixtureAsync(message);
        var box = bench.Definition.Fixture;
        Assert.Equal(fault == RelayFault.StuckOpen ? "(@9)" : "(@)", await bench.FixtureAsync("ROUT:CLOS:STAT?"));
        Assert.Equal(box.StrayPicofarads + (there * box.Relays[8].Picofarads), (await bench.ReadAsync()).Picofarads, 1.0);
    }

    [Fact]
    public async Task A_leaking_relay_shows_in_the_dissipation()
    {
        using var bench = new CapacitanceBench(definition => WithFault(definition, RelayFault.Leaking));
        await bench.SetUpAsync();
        Assert.InRange((await bench.ReadAsync()).Dissipation, 0, 0.001);
        await bench.FixtureAsync("ROUT:CLOS (@9);*OPC?");
        Assert.InRange((await bench.ReadAsync()).Dissipation, 0.045, 0.051);
    }

    [Theory]
    [InlineData("FUNC:IMP ZTD", "-224,\"Illegal parameter value\"")]
    [InlineData("FREQ 5E6", "-222,\"Data out of range\"")]
    [InlineData("APER SLOW", "-224,\"Illegal parameter value\"")]
    [InlineData("*TRG", "-211,\"Trigger ignored\"")]
    [InlineData("CONF:VOLT:AC", "-113,\"Undefined header\"")]
    public async Task What_it_does_not_know_it_refuses_by_the_standards_numbers(string message, string error)
    {
        using var bench = new CapacitanceBench();
        await bench.AskAsync("*RST");
        Assert.Null(await bench.AskAsync(message));
        Assert.Equal(error, await bench.AskAsync("SYST:ERR?"));
    }

    [Fact]
    public async Task Before_the_first_trigger_there_is_no_data()
    {
        using var bench = new CapacitanceBench();
        await bench.AskAsync("*RST;:TRIG:SOUR BUS");
        Assert.Equal("+9.90000E+37,+9.90000E+37,-1", await bench.AskAsync("FETC?"));
        await bench.AskAsync("TRIG");
        Assert.EndsWith(",+0", await bench.AskAsync("FETC?"), StringComparison.Ordinal);
    }

    private static BenchDefinition WithFault(BenchDefinition definition, RelayFault fault) => CapacitanceBench.Exact(definition) with
    {
        Fixture = definition.Fixture with
        {
            Relays = [.. definition.Fixture.Relays.Select((relay, index) => index == 8 ? relay with { Fault = fault } : relay)],
        },
    };
}
