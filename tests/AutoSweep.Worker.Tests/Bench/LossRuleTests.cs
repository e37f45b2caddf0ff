using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class LossRuleTests
{
    private readonly LossRule _rule = new(Plan(JobStage.Survey));

    [Theory]
    [InlineData("TCPIP::192.0.2.10::5025::SOCKET", BenchInstrument.Meter)]
    [InlineData("ASRL/dev/ttyUSB0::INSTR", BenchInstrument.Fixture)]
    public void A_broken_link_is_the_instruments_whose_resource_it_is(string resource, BenchInstrument instrument)
    {
        var lost = _rule.Lost(Fault(BenchFault.NotReachable, resource))!;

        Assert.Equal((instrument, resource), (lost.Instrument, lost.Resource));
    }

    [Theory]
    [InlineData(BenchFault.FixtureFault)]
    [InlineData(BenchFault.JournalNotWritten)]
    [InlineData(BenchFault.WrongCalibration)]
    [InlineData(BenchFault.NoAnswer)]
    public void A_fault_that_names_no_lost_resource_is_none(BenchFault kind) => Assert.Null(_rule.Lost(Fault(kind, null)));

    [Fact]
    public void Silence_three_times_without_a_reading_between_is_no_unplugging()
    {
        var silence = Fault(BenchFault.NoAnswer, "TCPIP::192.0.2.10::5025::SOCKET");
        Assert.NotNull(_rule.Lost(silence));
        Assert.NotNull(_rule.Lost(silence));
        Assert.Null(_rule.Lost(silence));
    }

    [Fact]
    public void A_reading_between_shows_that_the_meter_works()
    {
        var silence = Fault(BenchFault.NoAnswer, "TCPIP::192.0.2.10::5025::SOCKET");
        for (var time = 0; time < 10; time++)
        {
            Assert.NotNull(_rule.Lost(silence));
            _rule.Note(new(1, default, Some.Surveyed(3)));
        }
    }

    [Theory]
    [InlineData(BenchFault.NotReachable, JobStage.Survey)]
    [InlineData(BenchFault.NoAnswer)]
    public void A_loose_plug_and_a_bench_that_is_only_kept_are_waited_for_without_end(BenchFault kind, params JobStage[] stages)
    {
        var rule = new LossRule(Plan(stages));

        Assert.All(Enumerable.Range(0, 100), _ => Assert.NotNull(rule.Lost(Fault(kind, "ASRL/dev/ttyUSB0::INSTR"))));
    }

    private static JobPlan Plan(params JobStage[] stages) => new()
    {
        Wiring = new() { Meter = "tcpip::192.0.2.10::5025::socket", Fixture = " ASRL/dev/ttyUSB0::INSTR" },
        Stages = stages,
        HandsFree = true,
    };

    private static BenchFaultException Fault(BenchFault kind, string? lost) => new(kind, "found", "expected", "what to do") { LostResource = lost };
}
