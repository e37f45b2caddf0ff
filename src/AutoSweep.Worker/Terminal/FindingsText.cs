using AutoSweep.Core.Journal;
using AutoSweep.Worker.Reports;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>What a survey has noticed so far, latest outputs last.</summary>
public static class FindingsText
{
    // As many lines as the readings of a sweep have in the same place.
    private const int Shown = 6;

    /// <summary>The findings as lines, always of the same number.</summary>
    public static IRenderable Draw(JobState state, JobStage survey)
    {
        var flagged = state.SurveyOf(survey).Values.Where(one => one.Flags.Count > 0).TakeLast(Shown).Select(Line);
        var lines = flagged.Concat(Enumerable.Repeat(" ", Shown)).Take(Shown);
        return new Rows(lines.Select(line => new Text(line, new Style(Color.Red))));
    }

    private static string Line(OutputSurveyed surveyed) =>
        $" output {surveyed.Output,3}: {string.Join(", ", surveyed.Flags.Select(SurveyCsv.Name))}";
}
