using AutoSweep.Core;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Calibration;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Calibration;

public sealed class PausingSetsTests
{
    private const string Fixture = "COM3";

    private readonly ReturningMeters _place = new();
    private readonly FakeCapacitanceMeter _before = new();
    private readonly FakeCapacitanceMeter _after = new();
    private readonly FakeRelayBox _first = new();
    private readonly FakeRelayBox _second = new();

    [Fact]
    public async Task A_meter_that_is_lost_in_a_set_is_waited_for_and_the_whole_set_is_closed_and_read_anew()
    {
        _before.Reads(100, 101, 200);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(201, 202);

        var read = await ReadAsync(0b00, 0b01);

        Assert.Equal([0u, 1, 1], _first.Closed);
        Assert.Equal([100, 101, 201, 202], read.SelectMany(set => set).Select(one => one.Picofarads));
    }

    [Fact]
    public async Task A_fixture_that_is_lost_is_waited_for_and_the_set_closed_on_the_one_that_came_back()
    {
        _first.Fails = Lost(Fixture);
        _before.Reads(100, 101);

        var read = await ReadAsync(0b11);

        Assert.Equal([3u], _second.Closed);
        Assert.Equal([100, 101], read[0].Select(one => one.Picofarads));
        Assert.Contains(_place.Said, words => words.Contains("The fixture at COM3 is gone", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Both_are_waited_for_when_the_fixture_has_gone_in_the_meters_gap()
    {
        _before.Reads(100);
        _before.Fails(new BenchFaultException(BenchFault.NotReachable, "broke", "a link", "look") { LostResource = ReturningMeters.Resource });
        _first.FailsAfter = 1;
        _first.Fails = Lost(Fixture);
        _after.Reads(200, 201);

        var read = await ReadAsync(0b10);

        Assert.Equal([2u], _second.Closed);
        Assert.Equal([200, 201], read[0].Select(one => one.Picofarads));
    }

    private static BenchFaultException Lost(string resource) => new(BenchFault.NotReachable, "broke", "a link", "look") { LostResource = resource };

    private async Task<IReadOnlyList<IReadOnlyList<Core.Calibration.CalibrationReading>>> ReadAsync(params uint[] sets)
    {
        var box = new ReturningInstrument<IRelayBox>(
            _first, new("fixture", Fixture, one => one.Serial, _ => Task.FromResult<IRelayBox>(_second), "It is read anew."),
            new AutoSweep.Worker.Terminal.GapLines(_place.Said.Add, _place.Said.Add), _place.Clock);
        var meter = _place.ThenGone().Then(_after).Begin(_before);
        var reader = new PausingSets(box, meter, (relays, reading) => new MeteredSets(relays, reading!));
        return await _place.PassAsync(new RelaySetRun(reader).ReadAsync(sets, 2, default));
    }
}
