using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Peaks;

public class NominalPeakTests
{
    // 1/(2π√(LC)): a tone 1 % high is in tune with 1/1.01² of the capacitance, so at the nominal tone 1.0201 of it is wanted.
    [Fact]
    public void A_peak_moves_to_nominal_mains_with_the_square_of_the_counted_tone()
    {
        var peak = NominalPeak.Of(new(100_000), 50, countedHertz: 1010, nominalHertz: 1000);

        Assert.Equal(new Capacitance(102_010), peak.Capacitance);
        Assert.Equal(1.0201, peak.Scale, 1e-9);
        Assert.Equal(51.005, peak.SdPicofarads!.Value, 1e-6);
        Assert.False(peak.IsMainsAssumed);
    }

    // ±50 mHz of 50 Hz is ±0.1 %; the peak goes as the square, so ±0.2 %, rectangular: 0.2 %/√3 of 100 nF are 115.47 pF (GUM, 4.3.7).
    [Theory]
    [InlineData(0.0, 115.47)]
    [InlineData(50.0, 125.83)]
    [InlineData(200.0, 230.94)]
    public void Without_a_counted_tone_the_mains_are_nominal_and_what_is_not_known_of_them_adds_in_quadrature(double sd, double together)
    {
        var peak = NominalPeak.Of(new(100_000), sd, countedHertz: 0, nominalHertz: 1000);

        Assert.Equal(new Capacitance(100_000), peak.Capacitance);
        Assert.Equal(1, peak.Scale);
        Assert.Equal(together, peak.SdPicofarads!.Value, 0.01);
        Assert.True(peak.IsMainsAssumed);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_unknown_uncertainty_stays_unknown(double? sd)
    {
        var peak = NominalPeak.Of(new(100_000), sd, countedHertz: 0, nominalHertz: 1000);

        Assert.Null(peak.SdPicofarads);
        Assert.Equal(115.47, peak.MainsSdPicofarads, 0.01);
    }
}
