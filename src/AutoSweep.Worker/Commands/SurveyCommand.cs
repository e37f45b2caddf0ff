using System.CommandLine;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep survey</c>.</summary>
public static class SurveyCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => StageCommand.Build(
        "survey",
        "Reads tone, level and noise of every output and notes what is odd: dead, hum only, wrong tone, swapped, unsteady. "
        + "Writes DIR/survey.csv.",
        [Cautions.SpinningGenerator],
        JobStage.Survey);
}
