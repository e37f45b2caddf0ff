using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters;

/// <summary>What a driver file can say of a family that speaks otherwise than SCPI has it.</summary>
public sealed class MeterDialectTests
{
    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Fact]
    public async Task A_range_and_a_bandwidth_go_out_under_the_names_that_the_meter_has_for_them()
    {
        var small = Drivers.Small.Level!;
        var simple = new SimpleMeter();
        await using var meter = await LevelAsync(simple, Drivers.Small with
        {
            Level = small with { RangeArguments = ["0", "1", "2"], Bandwidths = [small.Bandwidths[0], small.Bandwidths[1] with { Argument = "M" }] },
        });
        await meter.PrepareLevelAsync(0.5, 500, default);
        Assert.Equal(["*RST", "CONF:VOLT:AC 1", "DET:BAND M"], simple.Commands);
        Assert.Equal((1, TimeSpan.FromSeconds(1)), (meter.RangeVolts, meter.Settling));
        await meter.PrepareLevelAsync(5, 50, default);
        Assert.Equal(["CONF:VOLT:AC 2", "DET:BAND 3"], simple.Commands.TakeLast(2));
    }

    [Theory]
    [InlineData("+9.99E+07", MeterReadingKind.Value)]
    [InlineData("+1.00E+08", MeterReadingKind.Overload)]
    [InlineData("-1.0E+9", MeterReadingKind.Overload)]
    [InlineData("9.91E37", MeterReadingKind.NoData)]
    public void From_the_size_that_the_driver_gives_a_number_means_overload(string reply, MeterReadingKind kind) =>
        Assert.Equal(kind, new DriverReply { OverloadFrom = 1e8 }.Read(reply).Kind);

    [Fact]
    public void Without_such_a_size_only_the_standards_infinity_does() =>
        Assert.Equal(MeterReadingKind.Value, new DriverReply().Read("1.0E+30").Kind);

    [Theory]
    [InlineData(44.9, false)]
    [InlineData(45, true)]
    public async Task No_uncertainty_is_stated_of_a_tone_below_those_that_the_makers_limits_hold_for(double hertz, bool stated)
    {
        await using var meter = await LevelAsync(new(), Drivers.Small with
        {
            Level = Drivers.Small.Level! with
            {
                Accuracy = new()
                {
                    ShareOfReading = 0.002, ShareOfRange = 0.0005, HoldsFromShareOfRange = 0.05, BelowAddShareOfRange = 0.001,
                    FromToneHertz = 45, Source = "test",
                },
            },
        });
        await meter.PrepareLevelAsync(0.05, hertz, default);
        Assert.Equal(stated, meter.UncertaintyVolts(0.05) is not null);
    }

    [Theory]
    [InlineData("C=186.97E-6,D=0.2015,BIN=2", CapacitanceReadingKind.Value, 0.2015)]
    [InlineData("C=186.97E-6,R=0.2015,BIN=2", CapacitanceReadingKind.Value, null)]
    [InlineData("L=1.5000E-6,Q=2.18,NOBIN", CapacitanceReadingKind.Invalid, null)]
    [InlineData("186.97E-6,0.2015", CapacitanceReadingKind.Invalid, null)]
    [InlineData("C=9.9E37,D=9.9E37", CapacitanceReadingKind.Overload, null)]
    public async Task The_letter_before_a_number_tells_the_quantity(string reply, CapacitanceReadingKind kind, double? dissipation)
    {
        await using var meter = await CapacitanceAsync(new() { Readings = new([reply]) }, Capacitance(with => with with
        {
            Reply = new() { CapacitanceField = 1, CapacitancePrefix = "C=", DissipationField = 2, DissipationPrefix = "D=" },
        }));
        var reading = await meter.ReadAsync(default);
        Assert.Equal((kind, dissipation), (reading.Kind, reading.Dissipation));
        if (kind == CapacitanceReadingKind.Value)
            Assert.Equal(186_970_000, reading.Picofarads, 3);
    }

    [Theory]
    [InlineData("0,1e28,1e28")]
    [InlineData("0,OL,OL")]
    public async Task A_familys_own_overload_counts_for_a_capacitance_too(string reply)
    {
        await using var meter = await CapacitanceAsync(
            new() { Readings = new([reply]) }, Drivers.CapacitanceOnly with { Reply = new() { OverloadFrom = 1 } });
        Assert.Equal(CapacitanceReadingKind.Overload, (await meter.ReadAsync(default)).Kind);
    }

    [Fact]
    public async Task A_trigger_that_is_not_answered_goes_out_before_every_query()
    {
        var simple = new SimpleMeter { Readings = new(["0,1e-9,0", "0,2e-9,0"]) };
        await using var meter = await CapacitanceAsync(simple, Capacitance(with => with with { Trigger = "TRIG" }));
        await meter.ReadAsync(default);
        await meter.ReadAsync(default);
        Assert.Equal(["TRIG", "READ?", "TRIG", "READ?"], simple.Link.Lines.TakeLast(4));
    }

    [Fact]
    public async Task The_event_register_serves_as_error_queue()
    {
        Queue<string> register = new(["128", "0", "32", "0"]); // power on before; then a command error (IEEE 488.2, 11.5.1)
        var link = new FakeLink { Answer = line => line switch { "*IDN?" => "Invented,M1\n", "*ESR?" => register.Dequeue() + "\n", _ => null } };
        var driver = Drivers.Small with { ErrorQuery = "*ESR?" };
        var fault = await Assert.ThrowsAsync<BenchFaultException>(
            () => ScpiLevelMeter.OpenAsync(new(link, MeterSessionOptions.Of(driver), _time, _log), driver, _time, _log, default));
        Assert.Contains("refuses the command *RST: 32", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pause_is_left_between_an_exchange_and_the_next_message()
    {
        var pause = TimeSpan.FromSeconds(0.1);
        var link = new FakeLink { Answer = line => line == "A?" ? "1\n" : null };
        await using var session = new ScpiSession(link, new() { Pause = pause }, _time, _log);
        var first = session.QueryAsync("A?", default);
        await _time.ElapseAsync(pause);
        await first;
        var next = session.SendAsync("B", default);
        await _time.AwaitedAsync(pause);
        Assert.Equal(["A?"], link.Lines);
        _time.Advance(pause);
        await next;
        _time.Advance(pause); // what has passed already is not waited again
        await session.SendAsync("C", default);
        Assert.Equal(["A?", "B", "C"], link.Lines);
    }

    private static MeterDriver Capacitance(Func<DriverCapacitance, DriverCapacitance> with) =>
        Drivers.CapacitanceOnly with { Capacitance = with(Drivers.CapacitanceOnly.Capacitance!) };

    private Task<ScpiLevelMeter> LevelAsync(SimpleMeter meter, MeterDriver driver) =>
        ScpiLevelMeter.OpenAsync(new(meter.Link, MeterSessionOptions.Of(driver), _time, _log), driver, _time, _log, default);

    private Task<ScpiCapacitanceMeter> CapacitanceAsync(SimpleMeter meter, MeterDriver driver) => ScpiCapacitanceMeter.OpenAsync(
        new(meter.Link, MeterSessionOptions.Of(driver), _time, _log), driver, AutoSweep.Core.Quantities.Capacitance.Zero, _time, _log, default);
}
