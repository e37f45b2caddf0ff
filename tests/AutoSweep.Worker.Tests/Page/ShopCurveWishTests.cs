using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Page.Jobs;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class ShopCurveWishTests : IDisposable
{
    private readonly TemporaryFolder _jobs = new();

    private JobShelf Shelf => JobShelf.Read(_jobs.Path);

    public void Dispose() => _jobs.Dispose();

    [Fact]
    public void The_curve_of_one_kind_is_drawn_without_naming_it_and_chosen_for_a_job()
    {
        MadeJob.Write(_jobs.File("done"), _ => 0, output => output == 5 ? 4 : 0);
        var curve = new ShopCurveWish { Name = " ours ", LeastTolerance = "0,8" }.Draw(Shelf);
        using var folder = new TemporaryFolder();
        using var job = Some.Job(folder, MadeJob.Generator);

        ShopCurveWish.Choose(job, curve);

        Assert.Equal("ours", TargetCurve.Of(job.State).Name);
        Assert.Equal(93, TargetCurve.Of(job.State).Points.Count);
        Assert.Equal(0.8, curve.Points.Min(point => point.ToleranceDecibels), 6);
    }

    [Fact]
    public void Only_outputs_that_the_generator_has_are_chosen()
    {
        MadeJob.Write(_jobs.File("done"), _ => 0, _ => 0);
        using var folder = new TemporaryFolder();
        using var job = Some.Job(folder);

        Assert.Equal(14, ShopCurveWish.Choose(job, new ShopCurveWish().Draw(Shelf)).Points.Count);
        Assert.Throws<BenchFaultException>(() => ShopCurveWish.Choose(job, new("x", "y", [new(90, 1, 1)])));
    }

    [Fact]
    public void Two_kinds_need_a_choice_and_unfinished_jobs_are_no_model()
    {
        MadeJob.Write(_jobs.File("begun"), _ => 0);
        Assert.Equal(BenchFault.StageNotReady, Assert.Throws<BenchFaultException>(() => new ShopCurveWish().Draw(Shelf)).Kind);

        MadeJob.Write(_jobs.File("one"), _ => 0, _ => 0);
        MadeJob.Write(_jobs.File("two"), _ => 0, _ => 0, profile: Some.Profile);
        Assert.Equal(2, ShopCurveWish.KindsIn(Shelf).Count);
        Assert.Equal("one kind", Assert.Throws<BenchFaultException>(() => new ShopCurveWish().Draw(Shelf)).Expected);
        Assert.Equal(14, new ShopCurveWish { Generator = Some.Profile.Name }.Draw(Shelf).Points.Count);
    }

    [Theory]
    [InlineData("", "1")]
    [InlineData("a", "0")]
    [InlineData("a", "21")]
    public void A_field_that_cannot_be_used_is_refused(string name, string least)
    {
        MadeJob.Write(_jobs.File("one"), _ => 0, _ => 0);

        Assert.Equal(BenchFault.BadFile,
            Assert.Throws<BenchFaultException>(() => new ShopCurveWish { Name = name, LeastTolerance = least }.Draw(Shelf)).Kind);
    }
}
