using AutoSweep.Core;
using AutoSweep.Core.Calibration;
using AutoSweep.Worker.Calibration;
using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Worker.Tests.Calibration;

public sealed class CalibratedFixtureTests
{
    private static readonly DateOnly Day = new(2026, 11, 24);

    [Fact]
    public void A_sound_solution_becomes_a_file_with_its_uncertainties_rounded_up()
    {
        var calibration = CalibratedFixture.Of(Solution(stray: 233.51234), "F-0007", "a meter", 23.1, Day);
        Assert.Equal((233.512, 100, 23.1), (calibration.StrayPicofarads, calibration.RelaysPicofarads[0], calibration.TemperatureCelsius));
        Assert.True(calibration.RelayStandardUncertaintiesPicofarads![0] >= Math.Sqrt(0.05));
    }

    [Fact]
    public void A_faulty_relay_stops_it_and_is_named()
    {
        var finding = new RelayFinding(RelayFindingKind.StuckOpen, 2, "closing it adds 0.1 pF");
        var fault = Assert.Throws<BenchFaultException>(() => CalibratedFixture.Of(Solution(findings: finding), "F", "m", null, Day));
        Assert.Equal(BenchFault.FixtureFault, fault.Kind);
        Assert.Contains("relay 2 is stuck open", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unusual_value_alone_does_not_stop_it() =>
        Assert.Equal("F", CalibratedFixture.Of(
            Solution(findings: new RelayFinding(RelayFindingKind.UnlikelyValue, 1, "")), "F", "m", null, Day).FixtureSerial);

    [Fact]
    public void Where_no_relay_changes_anything_it_is_the_clips_that_are_named()
    {
        var findings = Enumerable.Range(1, 3).Select(relay => new RelayFinding(RelayFindingKind.StuckOpen, relay, "")).ToArray();
        var fault = Assert.Throws<BenchFaultException>(() => CalibratedFixture.Of(Solution(findings: findings), "F", "m", null, Day));
        Assert.Contains("clips", fault.WhatToDo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-0.1, true)]
    [InlineData(-5, false)]
    public void A_stray_below_zero_by_noise_is_zero_and_by_more_a_fault(double stray, bool taken)
    {
        if (taken)
            Assert.Equal(0, CalibratedFixture.Of(Solution(stray), "F", "m", null, Day).StrayPicofarads);
        else
            Assert.Contains("open correction", Assert.Throws<BenchFaultException>(() =>
                CalibratedFixture.Of(Solution(stray), "F", "m", null, Day)).WhatToDo, StringComparison.Ordinal);
    }

    private static CalibrationSolution Solution(double stray = 233.5, params RelayFinding[] findings) => new(
        new(stray, 0.1, 100, 0.2), [.. Enumerable.Repeat(new CalibratedValue(100, 0.1, 100, 0.2), 3)],
        Matrix<double>.Build.DenseIdentity(4), new(0.01, 1e-4, 100), 0.5, findings);
}
