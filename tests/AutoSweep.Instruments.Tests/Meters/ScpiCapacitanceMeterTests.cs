using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters;

public sealed class ScpiCapacitanceMeterTests
{
    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Theory]
    [InlineData("0,+1.04500E-07,+5.0E-04", CapacitanceReadingKind.Value)]
    [InlineData("+0,1.045e-7,5e-4", CapacitanceReadingKind.Value)]
    [InlineData("1,+9.90000E+37,+9.9E+37", CapacitanceReadingKind.Overload)]
    [InlineData("1,+1.04500E-07,+5.0E-04", CapacitanceReadingKind.Overload)]
    [InlineData("2,+1.0E-13,+0.0E+00", CapacitanceReadingKind.NoContact)]
    [InlineData("0,+9.90000E+37,+9.9E+37", CapacitanceReadingKind.Overload)]
    [InlineData("0,+9.91000E+37,+9.91E+37", CapacitanceReadingKind.NoContact)]
    [InlineData("7,+1.04500E-07,+5.0E-04", CapacitanceReadingKind.Invalid)]
    [InlineData("0", CapacitanceReadingKind.Invalid)]
    [InlineData("0,104.5nF,0.0005", CapacitanceReadingKind.Invalid)]
    public async Task A_reply_is_a_value_or_says_why_there_is_none(string reply, CapacitanceReadingKind kind)
    {
        await using var meter = await OpenAsync(new() { Readings = new([reply]) });
        var reading = await meter.ReadAsync(default);
        Assert.Equal(kind, reading.Kind);
        Assert.Equal(kind != CapacitanceReadingKind.Value, double.IsNaN(reading.Picofarads));
        if (kind == CapacitanceReadingKind.Value)
            Assert.Equal((104_500, 5e-4), (Math.Round(reading.Picofarads, 6), reading.Dissipation));
    }

    [Fact]
    public async Task Stated_leads_are_taken_off_and_the_loss_stays_what_it_was()
    {
        await using var meter = await OpenAsync(new() { Readings = new(["0,+1.20E-10,+1.0E-03"]) }, lead: new(20));
        var reading = await meter.ReadAsync(default);
        Assert.Equal(100, reading.Picofarads, 6);
        Assert.Equal(0.0012, reading.Dissipation!.Value, 9); // D·C: 0.001 x 120 pF
    }

    [Fact]
    public async Task A_text_for_the_display_cannot_break_out_of_its_quotes_and_is_cut()
    {
        var simple = new SimpleMeter();
        await using var meter = await ScpiCapacitanceMeter.OpenAsync(
            new(simple.Link, new(), _time, _log),
            Drivers.CapacitanceOnly with { Display = new() { Command = "DISP:LINE \"{text}\"", Required = false } },
            Capacitance.Zero, _time, _log, default);
        await meter.ShowAsync("17 + 22\";*RST\n" + new string('x', 40), default);
        Assert.Contains("DISP:LINE \"17 + 22 ;*RST xxxxxxxxxxxxxxxx\"", simple.Link.Lines);
    }

    [Fact]
    public async Task The_accuracy_of_the_driver_file_is_the_meters()
    {
        await using var meter = await OpenAsync(new());
        Assert.Equal(new(0.001, 0.5), meter.Accuracy);
    }

    [Fact]
    public async Task A_refused_required_command_stops_and_a_refused_optional_one_does_not()
    {
        await using (await OpenAsync(new() { Refused = ["CORR:OPEN:STAT"] }))
        {
        }

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(new() { Refused = ["FREQ"] }));
        Assert.Contains("FREQ 1000", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_driver_without_capacitance_says_what_it_lacks()
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => ScpiCapacitanceMeter.OpenAsync(
            new(new SimpleMeter().Link, new(), _time, _log), Drivers.Small, Capacitance.Zero, _time, _log, default));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains("\"capacitance\"", fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_driver_without_level_says_what_it_lacks()
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => ScpiLevelMeter.OpenAsync(
            new(new SimpleMeter().Link, new(), _time, _log), Drivers.CapacitanceOnly, _time, _log, default));
        Assert.Contains("reads no level", fault.Found, StringComparison.Ordinal);
    }

    private Task<ScpiCapacitanceMeter> OpenAsync(SimpleMeter meter, Capacitance lead = default) => ScpiCapacitanceMeter.OpenAsync(
        new(meter.Link, new(), _time, _log), Drivers.CapacitanceOnly, lead, _time, _log, default);
}
