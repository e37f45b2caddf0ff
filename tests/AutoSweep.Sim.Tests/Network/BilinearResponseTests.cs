using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Making;
using AutoSweep.Sim.Network;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Network;

/// <summary>
/// Peaks against the closed forms: shunt C* = X/(w(R^2 + X^2)), half-width R/(w(R^2 + X^2)); series C* = 1/(wX), half-power at
/// 1/(w(X +- R)); the tap's peak from the quadratic N'D - ND' = 0. The figures are the worked examples' own, computed at 50 digits.
/// </summary>
public class BilinearResponseTests
{
    [Theory]
    [InlineData("ex1_series_rlc", 254.393170623, 12.7939498715, 19.908995024)]
    [InlineData("ex2_series_rlc", 288.057679949, 31.296437571, 9.25833218739)]
    [InlineData("ex3_series_rlc", 104.56724401, 7.66695044671, 13.6753121509)]
    [InlineData("ex4_series_rlc", 104.134157912, 10.1802616562, 10.2777899552)]
    [InlineData("ex5_series_rlc", 104.321799541, 9.17874512423, 11.4094917364)]
    [InlineData("ex6_series_rlc", 102.110512843, 15.9017363941, 6.49874244161)]
    [InlineData("ex8_transformer", 249.33969176, 159.02498965, 3.62809929583)]
    public void A_shunt_peak_lies_where_the_closed_form_says(string name, double nanofarads, double halfWidth, double gain)
    {
        var peak = Peak(name);
        Assert.Equal(nanofarads, peak.Farads * 1e9, 1e-7);
        Assert.Equal(halfWidth, peak.HalfWidthFarads * 1e9, 1e-7);
        Assert.Equal(gain, peak.Gain, 1e-9);
    }

    [Fact]
    public void A_series_peak_has_unequal_flanks_and_the_Q_of_its_own_variable()
    {
        var peak = Peak("ex11_series_c");
        Assert.Equal(108.002349466, peak.Farads * 1e9, 1e-7);
        Assert.Equal(87.4756199305, peak.LowerFarads!.Value * 1e9, 1e-7);
        Assert.Equal(141.116192034, peak.UpperFarads!.Value * 1e9, 1e-7);
        Assert.Equal(4.2615468665, OutputTruths.Q(Arrangement.Series, peak), 1e-9);
    }

    [Fact]
    public void A_tap_has_its_peak_below_its_trap()
    {
        var peak = Peak("ex9_tap");
        Assert.Equal(117.614789014, peak.Farads * 1e9, 1e-7);
        Assert.Equal(87.096131473, peak.LowerFarads!.Value * 1e9, 1e-7);
        Assert.Equal(140.988682902, peak.UpperFarads!.Value * 1e9, 1e-7);
        Assert.Equal(2.96802125409, peak.Gain, 1e-9);
    }

    [Fact]
    public void A_flank_that_would_need_a_negative_capacitance_is_left_out()
    {
        // Example 7: Q below 1, half-width 123.04 nF and the lower half-power point below zero.
        var peak = Peak("ex7_series_rlc");
        Assert.Null(peak.LowerFarads);
        Assert.Equal(123.0439713142218, peak.HalfWidthFarads * 1e9, 1e-6);
    }

    [Fact]
    public void A_resistor_alone_has_no_peak() =>
        Assert.Null(new BilinearResponse(farads => 1 / new System.Numerics.Complex(1, 2 * Math.PI * 1000 * farads * 100), 1e-7).Peak());

    private static ResponsePeak Peak(string name)
    {
        var example = NetworkExample.Of(name);
        return example.Network().Response(example.Hertz, 0).Peak()!.Value;
    }
}
