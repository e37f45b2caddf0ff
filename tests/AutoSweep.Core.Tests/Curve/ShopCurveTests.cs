using AutoSweep.Core.Curve;
using AutoSweep.Core.Tests.Curve.Support;

namespace AutoSweep.Core.Tests.Curve;

public class ShopCurveTests
{
    [Fact]
    public void The_shape_comes_out_of_generators_of_unlike_gain_with_odd_outputs_and_outputs_missing()
    {
        var random = new Random(11);
        List<LevelCurve> jobs = [.. Enumerable.Range(0, 7).Select(job => MadeCurve.Of(
            output => MadeCurve.Target(output) + (2 * job) - 6 - (output == 10 + job ? 8 : 0), 0.2, random))];
        jobs[3] = jobs[3] with { Points = [.. jobs[3].Points.Where(point => point.Output > 30)] };
        var curve = ShopCurve.Of("our shop (invented)", "seven made-up jobs", jobs);
        // The scatter of 0.2 dB over seven jobs leaves 0.08 dB an output: four of these.
        Assert.All(curve.Points, point => Assert.InRange((20 * Math.Log10(point.Millivolts)) - MadeCurve.Target(point.Output), -0.32, 0.32));
        Assert.Equal(91, curve.Points.Count);
        Assert.All(curve.Points, point => Assert.Equal(TargetCurve.UsualToleranceDecibels, point.ToleranceDecibels));
    }

    [Fact]
    public void One_odd_job_of_three_does_not_bend_the_curve()
    {
        var odd = MadeCurve.Of(output => MadeCurve.Target(output) + (0.1 * output));
        var curve = ShopCurve.Of("our shop (invented)", "", [MadeCurve.Of(MadeCurve.Target, 0.05, 1), odd, MadeCurve.Of(MadeCurve.Target, 0.05, 2)]);
        var off = curve.Points.Select(point => (20 * Math.Log10(point.Millivolts)) - MadeCurve.Target(point.Output)).ToList();
        Assert.InRange(off.Max() - off.Min(), 0, 0.7);
    }

    [Fact]
    public void The_tolerance_follows_the_jobs_scatter_where_it_is_more_than_the_floor()
    {
        var random = new Random(12);
        var curve = ShopCurve.Of("", "", [.. Enumerable.Range(0, 40).Select(_ => MadeCurve.Of(output => MadeCurve.Target(output), 1.5, random))]);
        // Two deviations of 1.5 dB, each known from 40 jobs to 20 % or so.
        Assert.InRange(curve.Points.Average(point => point.ToleranceDecibels), 2.7, 3.3);
    }

    [Fact]
    public void One_job_gives_its_own_levels() =>
        Assert.Equal(
            MadeCurve.Of(MadeCurve.Target).Points.Select(point => Math.Round(point.Millivolts, 9)),
            ShopCurve.Of("", "", [MadeCurve.Of(MadeCurve.Target)]).Points.Select(point => Math.Round(point.Millivolts, 9)));

    [Fact]
    public void An_edited_point_replaces_the_one_before_and_a_new_one_finds_its_place()
    {
        var curve = new TargetCurve("", "", [new(1, 5, 1), new(3, 6, 1)]).With(new(3, 7, 0.5)).With(new(2, 5.5, 1));
        Assert.Equal([new(1, 5, 1), new(2, 5.5, 1), new(3, 7, 0.5)], curve.Points);
        Assert.Equal([1, 3], curve.Without(2).Points.Select(point => point.Output));
    }
}
