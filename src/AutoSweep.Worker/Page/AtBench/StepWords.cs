using System.Globalization;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The words for steps and stages.</summary>
public static class StepWords
{
    /// <summary>A stage's name in a heading.</summary>
    public static string Name(JobStage stage) => stage switch
    {
        JobStage.Survey => "Survey",
        JobStage.Sweep => "Sweep",
        JobStage.Check => "Check",
        JobStage.Level => "Levels",
        _ => "As left",
    };

    /// <summary>A step's name in a list.</summary>
    public static string Name(JobStepKind kind) => kind switch
    {
        JobStepKind.OldSet => "Old set",
        JobStepKind.Match => "Match parts",
        JobStepKind.Fit => "Fit parts",
        JobStepKind.AsLeft => "As left",
        _ => kind.ToString(),
    };

    /// <summary>What the button of a step says.</summary>
    public static string Button(JobStep step) => (step.Kind, step.Stand) switch
    {
        (JobStepKind.Survey, StepStand.BrokenOff) => "Go on with the survey",
        (JobStepKind.Survey, _) => "Begin the survey",
        (JobStepKind.Sweep, StepStand.BrokenOff) => "Go on with the sweep",
        (JobStepKind.Sweep, _) => "Begin the sweep",
        (JobStepKind.OldSet, _) => "Measure what came off",
        (JobStepKind.Match, _) => "Match parts from the stock",
        (JobStepKind.Fit, StepStand.BrokenOff) => "Go on fitting parts",
        (JobStepKind.Fit, _) => "Fit the parts",
        (JobStepKind.Check, StepStand.BrokenOff) => "Go on with the check",
        (JobStepKind.Check, _) => "Begin the check",
        (JobStepKind.Levels, StepStand.BrokenOff) => "Go on with the levels",
        (JobStepKind.Levels, _) => "Level at the magnets",
        (JobStepKind.AsLeft, StepStand.BrokenOff) => "Go on with the last survey",
        (JobStepKind.AsLeft, _) => "Survey it as left",
        _ => "See the record",
    };

    /// <summary>What a step is for, in a sentence.</summary>
    public static string Purpose(JobStepKind kind) => kind switch
    {
        JobStepKind.Survey => "Clip every output once: tone, level and noise as found.",
        JobStepKind.Sweep => "Clip every filtered output with its old capacitor off: the fixture finds where it peaks.",
        JobStepKind.OldSet => "Measure the capacitors that came off, for the record.",
        JobStepKind.Match => "Choose parts from the stock for every peak.",
        JobStepKind.Fit => "Measure each part once more and solder it in.",
        JobStepKind.Check => "Clip every fitted output: does it give what its sweep promised?",
        JobStepKind.Levels => "Bring the outputs that are off the curve into their band.",
        JobStepKind.AsLeft => "Clip every output once more, as the generator is handed over.",
        _ => "Look it over, print it, hand it over.",
    };

    /// <summary>How far a step is: <c>12 of 43</c>, or what it waits for.</summary>
    public static string Stand(JobStep step) => step.Stand switch
    {
        StepStand.NotYet => Missing(step.Kind),
        StepStand.Done when step.Planned == 0 => "done",
        StepStand.Done => string.Create(CultureInfo.InvariantCulture, $"done, {step.Done} of {step.Planned}"),
        _ when step.Planned == 0 => "",
        _ => string.Create(CultureInfo.InvariantCulture, $"{step.Done} of {step.Planned}"),
    };

    private static string Missing(JobStepKind kind) => kind switch
    {
        JobStepKind.OldSet or JobStepKind.Match => "after the sweep",
        JobStepKind.Fit => "after matching",
        JobStepKind.Check => "after fitting",
        JobStepKind.Levels => "needs a survey and a target curve",
        _ => "after the survey",
    };
}
