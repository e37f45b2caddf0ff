using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Levelling;

public sealed class LevellingPlanTests : IDisposable
{
    private static readonly LevellingOptions WithoutRecap = new() { WithoutRecap = true, LeastGapMillimetres = 2 };

    private readonly BenchScene _scene = new();

    [Fact]
    public void Before_the_survey_there_is_nothing_to_level_by()
    {
        Refused("no output is surveyed", new() { WithoutRecap = true });
    }

    [Fact]
    public void Before_the_recap_it_is_refused_unless_this_job_has_none()
    {
        Survey();

        Refused("no capacitor is fitted", new());
        Assert.Equal([3], Works(WithoutRecap));
    }

    [Fact]
    public void Fitted_outputs_must_be_checked_first()
    {
        Survey();
        Fit(9);

        Refused("fitted but not checked: 9", new());
    }

    [Fact]
    public void After_the_recap_only_outputs_whose_capacitor_is_done_and_whose_level_is_explained_are_levelled()
    {
        Survey();
        foreach (var output in new[] { 9, 10 })
        {
            Fit(output);
            _scene.Job.Append(new OutputChecked
            {
                Output = output, Millivolts = 12, PredictedMillivolts = 12, StandardUncertaintyDecibels = 0.05, IsExplained = output == 9,
            });
        }

        var order = LevellingPlan.Of(_scene.Job.State, new());

        Assert.Equal([9, 3], order.Works.Select(work => work.Output));
        Assert.Equal([10], order.LeftOut.Select(left => left.Output));
    }

    [Theory]
    [InlineData(SurveyFinding.Unsteady, "stand still")]
    [InlineData(SurveyFinding.Swapped, "swapped")]
    public void What_is_no_magnets_business_is_left_out(SurveyFinding flag, string reason)
    {
        Survey();
        _scene.Job.Append(_scene.Job.State.Surveyed[3] with { Flags = [flag] });

        var order = LevellingPlan.Of(_scene.Job.State, WithoutRecap);

        Assert.Empty(order.Works);
        Assert.Contains(reason, Assert.Single(order.LeftOut).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rod_that_would_have_to_go_in_too_far_is_not_even_clipped()
    {
        Survey();
        _scene.Job.Append(_scene.Job.State.Surveyed[5] with { Millivolts = 1.5 });

        Assert.Equal([5], LevellingPlan.Of(_scene.Job.State, WithoutRecap with { LeastGapMillimetres = 0.1 }).LeftOut.Select(left => left.Output));
        Assert.Equal([5, 3], Works(WithoutRecap with { Gaps = new Dictionary<int, double> { [5] = 3 } }));
    }

    [Fact]
    public void The_jobs_own_target_goes_before_the_profiles()
    {
        Survey();
        _scene.Job.Append(new TargetChosen(new("as found", "test", [.. _scene.Job.State.Surveyed.Values.Select(one => new TargetPoint(one.Output,
            one.Millivolts, 1))])));

        Assert.Empty(Works(WithoutRecap));
    }

    public void Dispose() => _scene.Dispose();

    private void Refused(string found, LevellingOptions options)
    {
        var fault = Assert.Throws<BenchFaultException>(() => LevellingPlan.Of(_scene.Job.State, options));
        Assert.Equal(BenchFault.StageNotReady, fault.Kind);
        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
    }

    private IEnumerable<int> Works(LevellingOptions options) => LevellingPlan.Of(_scene.Job.State, options).Works.Select(work => work.Output);

    // The profile's own levels, but output 3 is 3 dB too loud.
    private void Survey()
    {
        foreach (var output in _scene.Job.Profile.Outputs)
            _scene.Job.Append(Some.Surveyed(output.Number) with
            {
                ToneHertz = _scene.Tone(output.Number), Millivolts = output.ExpectedMillivolts!.Value * (output.Number == 3 ? 1.4125 : 1),
                    RelativeUncertainty = 0.001,
            });
    }

    private void Fit(int output) => _scene.Job.Append(new OutputFitted
    {
        Output = output, Parts = ["A"], MeasuredPicofarads = 1, StandardUncertaintyPicofarads = 1, WantedPicofarads = 1, LossDecibels = 0, LedgerSequence = 1,
    });
}
