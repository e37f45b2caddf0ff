using AutoSweep.Core.Calibration;
using AutoSweep.Core.Tests.Calibration.Support;
using Xunit.Abstractions;

namespace AutoSweep.Core.Tests.Calibration;

/// <summary>Simulated fixtures with one faulty relay each, drawn at random.</summary>
public class RelayFindingTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(BoxFault.StuckOpen, RelayFindingKind.StuckOpen)]
    [InlineData(BoxFault.StuckClosed, RelayFindingKind.StuckClosed)]
    [InlineData(BoxFault.Leaking, RelayFindingKind.Leaking)]
    [InlineData(BoxFault.LeakingWhileOpen, RelayFindingKind.LeakingWhileOpen)]
    public void In_all_of_20_fixtures_the_faulty_relay_and_no_other_is_named(BoxFault fault, RelayFindingKind kind)
    {
        var ambiguous = 0;
        for (var seed = 1; seed <= 20; seed++)
        {
            var box = new MeasuredBox(1000 + seed, fault);
            var finding = Assert.Single(box.Calibrate().Findings);
            Assert.Equal(box.FaultyRelay + 1, finding.Relay);
            ambiguous += finding.Kind == RelayFindingKind.DoesNotSwitch ? 1 : 0;
            if (finding.Kind == RelayFindingKind.DoesNotSwitch)
                Assert.InRange(box.FaultyRelay, 0, 3); // no more than the stray itself
            else
                Assert.Equal(kind, finding.Kind);
        }

        output.WriteLine($"{fault}: 20 of 20 named, {ambiguous} of them without saying whether stuck open or closed");
    }

    [Fact]
    public void A_relay_that_fails_once_in_five_closures_is_named_wherever_it_failed_visibly()
    {
        var failed = 0;
        for (var seed = 1; seed <= 60; seed++)
        {
            var box = new MeasuredBox(2000 + seed, BoxFault.Intermittent);
            var findings = box.Calibrate().Findings;
            if (box.VisibleFailures > 0)
                Assert.Equal(
                    (seed, RelayFindingKind.Intermittent, box.FaultyRelay + 1), (seed, Assert.Single(findings).Kind, findings[0].Relay));
            failed += box.VisibleFailures > 0 ? 1 : 0;
        }

        output.WriteLine($"{failed} of 60 failed visibly, and all of them were named");
        Assert.True(failed > 40);
    }

    [Fact]
    public void A_relay_that_adds_two_percent_more_in_company_is_named()
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var box = new MeasuredBox(3000 + seed, BoxFault.OffWhenCombined);
            var finding = Assert.Single(box.Calibrate().Findings);
            Assert.Equal((RelayFindingKind.OffWhenCombined, box.FaultyRelay + 1), (finding.Kind, finding.Relay));
        }
    }

    [Fact]
    public void Values_typed_once_each_name_a_dead_relay_as_well()
    {
        var box = new MeasuredBox(7, BoxFault.StuckOpen);
        var finding = Assert.Single(box.Calibrate(CalibrationPlanOptions.ByHand).Findings);
        Assert.Equal(box.FaultyRelay + 1, finding.Relay);
    }

    [Fact]
    public void Values_typed_once_each_of_a_sound_box_find_nothing() =>
        Assert.All(Enumerable.Range(1, 50), seed => Assert.Empty(new MeasuredBox(seed).Calibrate(CalibrationPlanOptions.ByHand).Findings));
}
