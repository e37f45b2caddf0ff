using AutoSweep.Core.Curve;
using AutoSweep.Core.Tests.Curve.Support;

namespace AutoSweep.Core.Tests.Curve;

public class LumpinessTests
{
    private static readonly TargetCurve Target = TargetCurve.Of(MadeCurve.Generator);

    [Fact]
    public void Lumps_of_half_a_decibel_make_steps_of_0_7()
    {
        var random = new Random(5);
        var all = Enumerable.Range(0, 100).Select(_ => Lumpiness.Of(CurveComparison.Of(MadeCurve.Of(MadeCurve.Target, 0.5, random), Target))!.Value);
        // The difference of two independent values has the root of 2 times their deviation; 100 curves of 90 steps leave 0.01.
        Assert.InRange(all.Average(), 0.5 * Math.Sqrt(2) - 0.03, 0.5 * Math.Sqrt(2) + 0.03);
    }

    [Fact]
    public void A_perfect_curve_is_not_lumpy_whatever_its_gain() =>
        Assert.Equal(0, Lumpiness.Of(CurveComparison.Of(MadeCurve.Of(output => MadeCurve.Target(output) - 5), Target))!.Value, 9);

    [Fact]
    public void Three_wild_outputs_hardly_move_it()
    {
        var even = MadeCurve.Of(MadeCurve.Target, 0.5, 9);
        var wild = even with { Points = [.. even.Points.Select(point => point.Output is 20 or 50 or 80 ? point with { Millivolts = 0.3 } : point)] };
        var (before, after) = (Lumpiness.Of(CurveComparison.Of(even, Target))!.Value, Lumpiness.Of(CurveComparison.Of(wild, Target))!.Value);
        Assert.InRange(after / before, 0.9, 1.3);
    }

    [Fact]
    public void The_step_between_filter_groups_is_no_lump()
    {
        var group = MadeCurve.Generator.Outputs.ToDictionary(output => output.Number, output => output.Group);
        Assert.Equal(0, Lumpiness.Of(MadeCurve.Of(output => group[output].Length), MadeCurve.Generator)!.Value, 9);
    }

    [Fact]
    public void What_the_readings_alone_would_make_is_stated()
    {
        // 1 % is 0.0869 dB, of two neighbours 0.1228 dB.
        var comparison = CurveComparison.Of(MadeCurve.Of(MadeCurve.Target, relativeUncertainty: 0.01), Target);
        Assert.Equal(0.08685889638 * Math.Sqrt(2), Lumpiness.OfReadingsAlone(comparison)!.Value, 9);
    }

    [Fact]
    public void Fewer_than_three_neighbouring_pairs_have_no_lumpiness()
    {
        var curve = MadeCurve.Of(MadeCurve.Target, 1);
        var few = CurveComparison.Of(curve with { Points = [.. curve.Points.Where(point => point.Output is 1 or 2 or 3 or 5 or 7 or 9)] }, Target);
        Assert.Null(Lumpiness.Of(few));
        Assert.Null(Lumpiness.OfReadingsAlone(few));
    }
}
