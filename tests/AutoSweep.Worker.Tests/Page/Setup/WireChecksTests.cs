using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Page.Setup;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Setup;

public sealed class WireChecksTests
{
    [Fact]
    public async Task Every_relay_is_closed_by_itself_and_all_are_open_afterwards()
    {
        var box = new FakeRelayBox();

        var result = await WireChecks.FollowsAsync(box, default);

        Assert.Equal([1u, 2u, 4u, 0u], box.Closed);
        Assert.Equal(WireVerdict.Good, result.Verdict);
    }

    [Theory]
    [InlineData("F-0007", 3, WireVerdict.Good)]
    [InlineData("F-0008", 3, WireVerdict.NotGood)]
    [InlineData("F-0007", 2, WireVerdict.NotGood)]
    public void A_calibration_belongs_to_the_box_of_its_serial_number_and_count(string serial, int relays, WireVerdict verdict)
    {
        var calibration = new FixtureCalibration
        {
            FixtureSerial = serial, StrayPicofarads = 40, RelaysPicofarads = [.. Enumerable.Repeat(100.0, relays)],
        };

        var result = WireChecks.Belongs(calibration, new FakeRelayBox());

        Assert.Equal(verdict, result.Verdict);
        Assert.Contains("F-0007", result.Expected, StringComparison.Ordinal);
        Assert.Contains(serial, result.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(CapacitanceReadingKind.NoContact, WireVerdict.Good)]
    [InlineData(CapacitanceReadingKind.Value, WireVerdict.Good)]
    [InlineData(CapacitanceReadingKind.Overload, WireVerdict.Look)]
    [InlineData(CapacitanceReadingKind.Invalid, WireVerdict.NotGood)]
    public async Task A_capacitance_meter_answers_with_a_value_or_empty_clips(CapacitanceReadingKind kind, WireVerdict verdict)
    {
        var meter = new FakeCapacitanceMeter(new CapacitanceReading(kind, 3, null, "?"));

        Assert.Equal(verdict, (await WireChecks.MeasuresAsync(meter, default)).Verdict);
    }
}
