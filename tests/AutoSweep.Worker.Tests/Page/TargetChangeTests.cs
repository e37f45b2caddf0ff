using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Levels;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class TargetChangeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly JobRecord _job;

    public TargetChangeTests() => _job = Some.Job(_folder);

    private TargetCurve Target => TargetCurve.Of(_job.State);

    public void Dispose()
    {
        _job.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void A_file_that_is_sent_becomes_the_target_and_can_be_taken_back()
    {
        var own = Target;

        var notes = TargetUpload.Take(_job, new("my curve.csv", "output;level_mv;tolerance_db\n1;4,5;0,5\n2;5;1\n"));

        Assert.Equal("my curve", Target.Name);
        Assert.Equal([new TargetPoint(1, 4.5, 0.5), new(2, 5, 1)], Target.Points);
        Assert.Contains(notes, note => note.StartsWith("no target for output 3 to 14", StringComparison.Ordinal));
        Assert.Equal(own.Points, TargetChoice.TakeBack(_job).Points);
    }

    [Fact]
    public void A_file_with_bad_lines_changes_nothing_and_names_each()
    {
        var before = _job.State.Sequence;

        var fault = Assert.Throws<BenchFaultException>(() => TargetUpload.Take(_job, new("bad.csv", "output,level_mv\n1,loud\n99,3\n")));

        Assert.Contains("bad.csv: line 2", fault.Found, StringComparison.Ordinal);
        Assert.Contains("line 3", fault.Found, StringComparison.Ordinal);
        Assert.Equal(before, _job.State.Sequence);
    }

    [Fact]
    public void One_outputs_level_tolerance_and_whole_target_are_changed()
    {
        new TargetEdit(3, 7.5, null, WithoutTarget: false).Apply(_job);
        new TargetEdit(3, null, 2, WithoutTarget: false).Apply(_job);
        Assert.Equal(new(3, 7.5, 2), Target.Points.Single(point => point.Output == 3));

        new TargetEdit(3, null, null, WithoutTarget: true).Apply(_job);
        Assert.DoesNotContain(Target.Points, point => point.Output == 3);
        Assert.EndsWith("expected levels, edited", Target.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(99, 5.0, null)]
    [InlineData(3, null, null)]
    public void An_unknown_output_and_an_edit_without_a_change_are_refused(int output, double? level, double? tolerance)
    {
        Assert.Throws<BenchFaultException>(() => new TargetEdit(output, level, tolerance, WithoutTarget: false).Apply(_job));
    }

    [Fact]
    public void A_tolerance_alone_is_refused_where_there_is_no_level()
    {
        new TargetEdit(3, null, null, WithoutTarget: true).Apply(_job);

        Assert.Contains("no target level", Assert.Throws<BenchFaultException>(
            () => new TargetEdit(3, null, 1, WithoutTarget: false).Apply(_job)).Found, StringComparison.Ordinal);
    }
}
