using System.CommandLine;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep survey</c>.</summary>
public static class SurveyCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var asLeft = new Option<bool>("--as-left")
        {
            Description = "The last survey, as the generator is handed over. The first one, as found, stays beside it. Writes DIR/as-left.csv.",
        };
        return StageCommand.Build(
            "survey",
            "Reads tone, level and noise of every output and notes what is odd: dead, hum only, wrong tone, swapped, unsteady. "
            + "Writes DIR/survey.csv.",
            [Cautions.SpinningGenerator],
            clips: true,
            parsed => [parsed.GetValue(asLeft) ? JobStage.AsLeft : JobStage.Survey],
            asLeft);
    }
}
