using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;

namespace AutoSweep.Worker.Levelling;

/// <summary>Which magnets of a job are to be worked at, from what its journal knows; or why none may be yet.</summary>
public static class LevellingPlan
{
    // What is wrong there is not put right by moving a magnet.
    private static readonly Dictionary<GeneratorFault, string> NotAMagnet = new()
    {
        [GeneratorFault.DeadPickup] = "its pickup is dead",
        [GeneratorFault.MiswiredTerminals] = "another output's tone is at its terminal",
        [GeneratorFault.UnsteadyWheel] = "its level swings with its wheel",
        [GeneratorFault.HumWithoutTone] = "its wheel does not turn",
    };

    private static readonly Dictionary<SurveyFinding, string> NotLevelled = new()
    {
        [SurveyFinding.Dead] = "it is dead",
        [SurveyFinding.HumOnly] = "it only hums",
        [SurveyFinding.WrongTone] = "it has a wrong tone",
        [SurveyFinding.Swapped] = "its terminal may be swapped",
        [SurveyFinding.Unsteady] = "its level does not stand still",
    };

    /// <summary>The order of work.</summary>
    /// <exception cref="BenchFaultException">The job is not ready: what is missing, and how to get it.</exception>
    public static MagnetWorkOrder Of(JobState state, LevellingOptions options)
    {
        CheckReady(state, options);
        var target = state.ChosenTarget ?? TargetCurve.Of(state.Profile!);
        var curve = LevelCurve.Of(state, state.Checked.IsEmpty ? CurveStand.AsFound : CurveStand.AfterRecap);
        var comparison = CurveComparison.Of(curve, target);
        return WithinReach(MagnetWorkOrder.Of(comparison, Reasons(state, options), options.Guidance), state, options);
    }

    // What the guidance would refuse before anything is touched need not be clipped.
    private static MagnetWorkOrder WithinReach(MagnetWorkOrder order, JobState state, LevellingOptions options)
    {
        var refused = order.Works.Where(work => IsRefused(work, state, options)).ToList();
        return new(
            [.. order.Works.Except(refused)],
            [.. order.LeftOut, .. refused.Select(work => new MagnetLeftOut(work.Output, string.Create(CultureInfo.InvariantCulture,
                $"{-work.Decibels:0.0} dB lie further in than the known gap allows: a thicker feeler gauge leaf may say more")))]);
    }

    private static bool IsRefused(MagnetWork work, JobState state, LevellingOptions options)
    {
        var teeth = state.Profile!.Outputs.Single(output => output.Number == work.Output).WheelTeeth;
        var reading = new MagnetReading(work.Decibels, options.Guidance.HalfBandDecibels / 2);
        return MagnetGuidance.Replay(options.RodOf(work.Output, teeth), options.Guidance, [reading]).Next()
            is GuidanceStep.Done { Result.Ending: GuidanceEnding.NearContact };
    }

    private static void CheckReady(JobState state, LevellingOptions options)
    {
        if (state.Surveyed.IsEmpty)
            throw NotReady("no output is surveyed", "a survey of all outputs", "survey them", "autosweep survey");
        if ((state.ChosenTarget ?? TargetCurve.Of(state.Profile!)).Points.Count == 0)
            throw NotReady("no target curve", "one that says what each output should give", "choose one", "autosweep curve");
        if (options.WithoutRecap || !state.Profile!.FilteredOutputs.Any())
            return;
        if (state.Fitted.IsEmpty)
            throw NotReady("no capacitor is fitted: levels change with them", "levelling after the recap",
                "match and fit the parts, or say that there is no recap", "autosweep match, autosweep fit, or --without-recap");
        var notChecked = state.Fitted.Keys.Where(output => !state.Checked.ContainsKey(output)).ToList();
        if (notChecked.Count > 0)
            throw NotReady($"fitted but not checked: {string.Join(", ", notChecked)}", "the level of every fitted output, read after the recap",
                "check them", "autosweep check --resume");
    }

    private static Dictionary<int, string> Reasons(JobState state, LevellingOptions options)
    {
        Dictionary<int, string> reasons = [];
        foreach (var finding in Diagnose.Of(state).Where(one => one.Output is not null && NotAMagnet.ContainsKey(one.Fault)))
            reasons[finding.Output!.Value] = NotAMagnet[finding.Fault];
        foreach (var finding in Diagnose.Of(state).Where(one => IsOldCapacitor(one, state)))
            reasons[finding.Output!.Value] = "its old capacitor takes level";
        foreach (var surveyed in state.Surveyed.Values.Where(one => one.Flags.Any(NotLevelled.ContainsKey)))
            reasons[surveyed.Output] = NotLevelled[surveyed.Flags.First(NotLevelled.ContainsKey)];
        foreach (var seen in state.Checked.Values.Where(seen => !seen.IsExplained))
            reasons[seen.Output] = "its level is not what its new parts should give: look at the joints first";
        foreach (var output in state.Profile!.FilteredOutputs.Where(output => !options.WithoutRecap && !state.Checked.ContainsKey(output.Number)))
            reasons[output.Number] = "its capacitor is not done";
        return reasons;
    }

    private static bool IsOldCapacitor(Finding finding, JobState state) =>
        finding is { Output: { } output, Fault: GeneratorFault.CapacitorDrifted or GeneratorFault.CapacitorOpen or GeneratorFault.CapacitorLeaky }
        && !state.Checked.ContainsKey(output);

    private static BenchFaultException NotReady(string found, string expected, string whatToDo, string atTerminal) =>
        new(BenchFault.StageNotReady, found, expected, whatToDo) { AtTerminal = atTerminal };
}
