using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Diagnosis.Support;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Diagnosis;

public sealed class DiagnoseTests
{
    private void ByHand()
    {
        _generator.SurveyAll(seen => seen with { ToneHertz = null, IsNamedByPerson = true, WheelSwing = null, WheelSwingUncertainty = null });
        _generator.SweepAll(swept => swept with { ToneHertz = 0 });
    }

    private readonly SoundGenerator _generator = new();

    [Fact]
    public void A_sound_generator_has_no_findings() => Assert.Empty(Diagnose.Of(_generator.Fold()));

    [Fact]
    public void A_job_of_which_nothing_is_known_has_no_findings() => Assert.Empty(Diagnose.Of(JobState.Empty));

    [Fact]
    public void Neither_tone_nor_hum_is_a_dead_pickup()
    {
        _generator.Survey(20, seen => seen with { ToneHertz = null, Millivolts = 0.006, Flags = [SurveyFinding.Dead] });

        Found(GeneratorFault.DeadPickup, 20);
    }

    [Fact]
    public void Hum_where_a_tone_should_be_is_a_wheel_that_stands()
    {
        _generator.Survey(20, seen => seen with { ToneHertz = null, Millivolts = 0.4, Flags = [SurveyFinding.HumOnly] });

        Found(GeneratorFault.HumWithoutTone, 20);
    }

    // A meter read by eye counts nothing: that no tone was counted says nothing of the generator.
    [Fact]
    public void A_sound_generator_that_was_surveyed_and_swept_by_hand_has_no_findings()
    {
        ByHand();

        Assert.Empty(Diagnose.Of(_generator.Fold()));
    }

    [Fact]
    public void By_hand_a_silent_output_is_dead_and_a_drifted_capacitor_is_found_as_ever()
    {
        ByHand();
        _generator.Survey(20, seen => seen with { Millivolts = 0.006, Flags = [SurveyFinding.Dead] });
        _generator.Survey(77, seen => seen with { Millivolts = seen.Millivolts / 3 });

        Assert.Equal([(GeneratorFault.DeadPickup, 20), (GeneratorFault.CapacitorDrifted, 77)],
            Diagnose.Of(_generator.Fold()).Select(one => (one.Fault, one.Output!.Value)).OrderBy(one => one.Item2));
    }

    [Fact]
    public void A_filtered_output_that_is_silent_in_the_survey_and_sounds_in_the_sweep_has_an_open_capacitor()
    {
        _generator.Survey(77, seen => seen with { ToneHertz = null, Millivolts = 0.05, Flags = [SurveyFinding.HumOnly] });

        Found(GeneratorFault.CapacitorOpen, 77);
    }

    [Fact]
    public void A_filtered_output_that_no_capacitance_makes_sound_is_dead()
    {
        _generator.Survey(77, seen => seen with { ToneHertz = null, Millivolts = 0.005, Flags = [SurveyFinding.Dead] });
        _generator.Sweep(77, swept => new() { Output = 77, ToneHertz = 0, Reason = PeakStopReason.LevelLost, Law = swept.Law, Readings = 0 });

        Found(GeneratorFault.DeadPickup, 77);
    }

    [Theory]
    [InlineData(150_000, 0.01, GeneratorFault.CapacitorDrifted)]
    [InlineData(104_000, 0.2, GeneratorFault.CapacitorLeaky)]
    [InlineData(900, 0.02, GeneratorFault.CapacitorOpen)]
    [InlineData(null, null, GeneratorFault.CapacitorOpen)]
    public void What_the_old_capacitor_measured_tells_what_ails_it(int? picofarads, double? dissipation, GeneratorFault expected)
    {
        _generator.Survey(77, seen => seen with { Millivolts = seen.Millivolts / 3 });
        var measured = picofarads is { } value ? new PartMeasurement(value, 50, Some.Time, dissipation) : null;

        var finding = Assert.Single(Diagnose.Of(_generator.Fold(), new Dictionary<int, OldCapacitorRemoved> { [77] = new("job", 77, measured) }));

        Assert.Equal((expected, 77), (finding.Fault, finding.Output));
        Assert.Equal(9.54, finding.Size!.Value, 0.01); // 20 log10 3
    }

    [Fact]
    public void A_sound_old_capacitor_is_not_blamed_for_what_it_loses_by_nature()
    {
        _generator.Survey(77, seen => seen with { Millivolts = seen.Millivolts * 0.96 });
        var old = new OldCapacitorRemoved("job", 77, new(105_400, 50, Some.Time, 0.004));

        Assert.Empty(Diagnose.Of(_generator.Fold(), new Dictionary<int, OldCapacitorRemoved> { [77] = old }));
    }

    [Theory]
    [InlineData(0.5, GeneratorFault.WeakMagnet)]
    [InlineData(2, GeneratorFault.StrongMagnet)]
    public void A_level_off_the_curve_with_the_filter_at_its_peak_is_the_magnets(double factor, GeneratorFault expected)
    {
        _generator.Survey(70, seen => seen with { Millivolts = factor * seen.Millivolts });
        _generator.Sweep(70, swept => swept with { PeakMillivolts = factor * swept.PeakMillivolts });

        Found(expected, 70);
    }

    [Fact]
    public void A_swing_at_the_wheels_own_rate_is_an_unsteady_wheel()
    {
        _generator.Survey(30, seen => seen with { WheelSwing = 0.09 });

        Found(GeneratorFault.UnsteadyWheel, 30);
    }

    [Fact]
    public void Swapped_terminals_are_both_named()
    {
        foreach (var output in new[] { 12, 13 })
            _generator.Survey(output, seen => seen with { Flags = [SurveyFinding.Swapped] });

        Assert.Equal([(GeneratorFault.MiswiredTerminals, (int?)12), (GeneratorFault.MiswiredTerminals, 13)], Findings());
    }

    [Theory]
    [InlineData(1.006, null, "EN 50160")]
    [InlineData(1.006, 60.36, "supply is")]
    [InlineData(0.992, 60.0, "not in step")]
    [InlineData(0.95, null, "drags behind")]
    public void Tones_that_are_all_off_by_one_ratio_are_the_speeds_and_the_hum_tells_whose(double ratio, double? hum, string expected)
    {
        _generator.SurveyAll(seen => seen with { ToneHertz = ratio * seen.ToneHertz });
        if (hum is not null)
            _generator.Survey(3, seen => seen with { ToneHertz = null, HumHertz = hum, Millivolts = 0.6, Flags = [SurveyFinding.HumOnly] });

        var finding = Diagnose.Of(_generator.Fold())[0];

        Assert.Equal((GeneratorFault.OffSpeed, null), (finding.Fault, finding.Output));
        Assert.Contains(expected, finding.Evidence, StringComparison.Ordinal);
        Assert.Equal(100 * (ratio - 1), finding.Size!.Value, 1e-6);
    }

    [Fact]
    public void Filtered_outputs_that_are_all_low_speak_for_a_loading_meter()
    {
        foreach (var output in Enumerable.Range(49, 43))
        {
            _generator.Survey(output, seen => seen with { Millivolts = seen.Millivolts / 1.6 });
            _generator.Sweep(output, swept => swept with { PeakMillivolts = swept.PeakMillivolts / 1.6 });
        }

        var finding = Assert.Single(Diagnose.Of(_generator.Fold()));
        Assert.Equal((GeneratorFault.MeterLoading, null), (finding.Fault, finding.Output));
    }

    [Theory]
    [InlineData(GeneratorFault.WeakMagnet)]
    [InlineData(GeneratorFault.HumWithoutTone)]
    [InlineData(GeneratorFault.UnsteadyWheel)]
    public void Where_a_hand_would_go_near_the_wheels_the_motor_is_stopped_first(GeneratorFault fault) =>
        Assert.Contains("Stop the motor", FaultWords.Confirm(fault), StringComparison.Ordinal);

    private void Found(GeneratorFault fault, int output) => Assert.Equal([(fault, (int?)output)], Findings());

    private IEnumerable<(GeneratorFault, int?)> Findings() => Diagnose.Of(_generator.Fold()).Select(finding => (finding.Fault, finding.Output));
}
