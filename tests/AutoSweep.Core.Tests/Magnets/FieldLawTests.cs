using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Tests.Magnets;

public sealed class FieldLawTests
{
    // The spacing loss of magnetic recording is the same law: 54.6 dB a wavelength (R. L. Wallace, "The Reproduction of Magnetically Recorded
    // Signals", Bell System Technical Journal 30, 1951).
    [Fact]
    public void A_pitch_costs_what_a_wavelength_costs_in_magnetic_recording()
    {
        Assert.InRange(FieldLaw.DecibelsPerPitch, 54.55, 54.65);
        Assert.Equal(FieldLaw.DecibelsPerPitch, 20 * Math.Log10(Math.Exp(2 * Math.PI)), 4);
    }

    // exp(-2·pi·gap/pitch) on a two-inch wheel, worked out by hand: trade figures, computed and not measured.
    [Theory]
    [InlineData(2, 0.7)]
    [InlineData(8, 2.7)]
    [InlineData(32, 10.9)]
    [InlineData(128, 43.8)]
    [InlineData(192, 65.7)]
    public void The_law_gives_the_figures_of_the_trade(int teeth, double decibelsPerMillimetre) =>
        Assert.Equal(decibelsPerMillimetre, FieldLaw.Law(teeth), 0.06);
}
