using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Support;
using AutoSweep.Sources.Networks;

namespace AutoSweep.Core.Tests.Diagnosis;

/// <summary>What a lossy capacitor of another value costs, against complex impedances of the same network.</summary>
public sealed class CapacitorEffectTests
{
    private const double Omega = 2 * Math.PI * 740;

    [Theory]
    [InlineData(152_000, 0.3)]
    [InlineData(104_567, 0.1)]
    [InlineData(80_000, 0.06)]
    public void In_series_the_evidence_says_what_the_impedances_give(long picofarads, double dissipation)
    {
        SeriesNetwork With(double loss) => new(Omega, 60, 0.1, 90, 0.34, 1e12, loss);
        // R 150 ohm, L 0.44 H at 740 Hz: C* 105.13 nF, Q 13.64.
        var peak = 1e12 / (Omega * Omega * 0.44);

        Compare(ResponseLaw.Series, peak, Omega * 0.44 / 150, picofarads, dissipation, farads => With(0).Output(farads).Magnitude, farads => With(dissipation).Output(farads).Magnitude);
    }

    [Theory]
    [InlineData(152_000, 0.3)]
    [InlineData(104_567, 0.1)]
    public void In_shunt_too(long picofarads, double dissipation)
    {
        ShuntNetwork With(double loss) => new(Omega, 150, 0.44, 1e12, loss);
        // C* = L/(R² + X²): 104.567 nF, Q = X/R.
        var x = Omega * 0.44;
        var peak = 1e12 * 0.44 / ((150 * 150) + (x * x));

        Compare(ResponseLaw.Shunt, peak, x / 150, picofarads, dissipation, farads => With(0).Output(farads).Magnitude, farads => With(dissipation).Output(farads).Magnitude);
    }

    private static void Compare(
        ResponseLaw law, double peak, double q, long picofarads, double dissipation, Func<double, double> lossless, Func<double, double> lossy)
    {
        var profile = GeneratorProfileLibrary.Open("classic-91-60hz");
        var output = profile.Outputs.Single(one => one.Number == 70);
        var tone = profile.ToneOf(output).Hertz;
        const double AtPeak = 5;
        var asFound = AtPeak * lossy(picofarads * 1e-12) / lossless(peak * 1e-12);
        var state = Some.Fold(
            new JobOpened("AutoSweep", profile),
            new OutputSurveyed { Output = 70, ToneHertz = tone, Millivolts = asFound, NoiseMillivolts = 0.003 * asFound, Flags = [] },
            new OutputSwept { Output = 70, ToneHertz = tone, Reason = PeakStopReason.BoundReached, PeakPicofarads = (long)Math.Round(peak), Q = q, PeakMillivolts = AtPeak, Law = law, Readings = 8 });
        var old = new OldCapacitorRemoved("job", 70, new(picofarads, 10, Some.Time, dissipation));

        var finding = Assert.Single(Diagnose.Of(state, new Dictionary<int, OldCapacitorRemoved> { [70] = old }));

        Assert.Equal(GeneratorFault.CapacitorLeaky, finding.Fault);
        var byValue = 20 * Math.Log10(lossless(peak * 1e-12) / lossless(picofarads * 1e-12));
        var byLoss = 20 * Math.Log10(lossless(picofarads * 1e-12) / lossy(picofarads * 1e-12));
        Assert.Contains(FormattableString.Invariant($"costs {byValue:0.0} dB by its value and {byLoss:0.0} dB by its losses"), finding.Evidence, StringComparison.Ordinal);
        Assert.Equal(byValue + byLoss, finding.Size!.Value, 0.05);
    }
}
