using AutoSweep.Core.Curve;
using AutoSweep.Core.Tests.Curve.Support;

namespace AutoSweep.Core.Tests.Curve;

public class CurveComparisonTests
{
    private static readonly TargetCurve Target = TargetCurve.Of(MadeCurve.Generator);

    [Fact]
    public void The_overall_gain_is_found_though_a_third_of_the_outputs_is_far_too_soft()
    {
        var comparison = CurveComparison.Of(MadeCurve.Of(output => MadeCurve.Target(output) + 3 - (output % 3 == 0 ? 9 : 0), 0.1), Target);
        Assert.Equal(3, comparison.GainDecibels, 1);
        Assert.All(comparison.Deviations, one => Assert.Equal(one.Output % 3 == 0 ? CurveVerdict.TooSoft : CurveVerdict.Within, one.Verdict));
    }

    // As a demo's generator is found: its filters (49 and up) drifted by 1 to 20 dB, its plain outputs sound.
    [Fact]
    public void Half_a_generator_of_drifted_filters_does_not_make_the_sound_half_too_loud()
    {
        var random = new Random(4);
        var drift = Enumerable.Range(0, 92).Select(_ => 1 + (19 * random.NextDouble())).ToArray();
        var comparison = CurveComparison.Of(MadeCurve.Of(output => MadeCurve.Target(output) - (output >= 49 ? drift[output] : 0), 0.3, random), Target);
        Assert.InRange(comparison.GainDecibels, -0.4, 0.4);
        Assert.All(comparison.Deviations.Take(48), one => Assert.Equal(CurveVerdict.Within, one.Verdict));
    }

    [Fact]
    public void Decibels_of_noise_are_not_compared()
    {
        var curve = MadeCurve.Of(MadeCurve.Target);
        curve = curve with { Points = [.. curve.Points.Select(point => point.Output == 5 ? new(5, 0.01, 2) : point)] };
        var comparison = CurveComparison.Of(curve, Target);
        Assert.Equal((null, CurveVerdict.NotCompared), (comparison.Deviations[4].Decibels, comparison.Deviations[4].Verdict));
        Assert.Equal(OutlierVerdict.NotJudged, LevelOutliers.Of(MadeCurve.Generator, comparison).Outputs[4].Verdict);
    }

    [Fact]
    public void The_mean_would_have_been_three_decibels_off()
    {
        var curve = MadeCurve.Of(output => MadeCurve.Target(output) + 3 - (output % 3 == 0 ? 9 : 0));
        var mean = curve.Points.Average(point => (20 * Math.Log10(point.Millivolts)) - MadeCurve.Target(point.Output));
        Assert.InRange(mean, -0.1, 0.1);
    }

    [Theory]
    // 20 log10(1.12) = 0.98 dB; two standard deviations of 1 % are 0.17 dB.
    [InlineData(0.9, 0.01, CurveVerdict.Within)]
    [InlineData(1.1, 0.01, CurveVerdict.Within)]
    [InlineData(1.3, 0.01, CurveVerdict.TooLoud)]
    [InlineData(-1.3, 0.01, CurveVerdict.TooSoft)]
    [InlineData(1.3, 0.03, CurveVerdict.Within)]
    [InlineData(1.9, 0.03, CurveVerdict.TooLoud)]
    public void Only_what_tolerance_and_reading_uncertainty_do_not_explain_is_a_deviation(double off, double uncertainty, CurveVerdict verdict)
    {
        var comparison = CurveComparison.Of(MadeCurve.Of(output => MadeCurve.Target(output) + (output == 40 ? off : 0), relativeUncertainty: uncertainty), Target);
        Assert.Equal(verdict, comparison.Deviations[39].Verdict);
        Assert.Equal(off, comparison.Deviations[39].Decibels!.Value, 6);
        Assert.Equal(2 * 8.685889638 * uncertainty, comparison.Deviations[39].UncertaintyDecibels, 9);
    }

    [Fact]
    public void A_shape_in_decibels_compares_as_the_same_levels_in_millivolts()
    {
        var shape = TargetCurve.OfShape("shape", "made up", Target.Points.Select(point => (point.Output, 20 * Math.Log10(point.Millivolts) - 31, 1.0)));
        var curve = MadeCurve.Of(MadeCurve.Target, 1);
        var (one, other) = (CurveComparison.Of(curve, Target), CurveComparison.Of(curve, shape));
        Assert.Equal(one.GainDecibels, other.GainDecibels - 31, 9);
        Assert.All(one.Deviations.Zip(other.Deviations), pair => Assert.Equal(pair.First.Decibels!.Value, pair.Second.Decibels!.Value, 9));
    }

    [Fact]
    public void A_dead_output_and_one_without_a_target_are_not_compared()
    {
        var curve = MadeCurve.Of(MadeCurve.Target);
        curve = curve with { Points = [.. curve.Points.Select(point => point.Output == 5 ? point with { Millivolts = 0 } : point)] };
        var comparison = CurveComparison.Of(curve, Target.Without(6));
        Assert.Equal([5, 6], comparison.Deviations.Where(one => one.Verdict == CurveVerdict.NotCompared).Select(one => one.Output));
    }

    [Fact]
    public void Nothing_to_compare_gives_no_gain_and_no_verdict()
    {
        var comparison = CurveComparison.Of(MadeCurve.Of(MadeCurve.Target), MadeCurve.NoTarget);
        Assert.Equal(0, comparison.GainDecibels);
        Assert.All(comparison.Deviations, one => Assert.Equal(CurveVerdict.NotCompared, one.Verdict));
    }
}
