using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Serialization;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Scoring;

namespace AutoSweep.Sim.Commands;

/// <summary><c>autosweep-sim score</c>: a job's results against the bench file's answers.</summary>
internal static class ScoreCommand
{
    /// <summary>The exit code of a job that is not good.</summary>
    public const int NotGood = 1;

    // An output that is missing has no error to state: JSON has no word for "not a number" but this one.
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    public static Command Create()
    {
        var bench = BenchOption.Create();
        var sweeps = new Option<string>("--sweeps") { Description = "The job's sweeps.csv.", Required = true };
        var survey = new Option<string?>("--survey") { Description = "The job's survey.csv." };
        var json = new Option<bool>("--json") { Description = "Print the score as JSON." };
        var command = new Command("score", "Compares a job's results with the bench file's answers; exit code 0 if all are good.")
        {
            bench, sweeps, survey, json,
        };
        command.SetAction(parsed =>
        {
            var score = Score(parsed.GetRequiredValue(bench), parsed.GetRequiredValue(sweeps), parsed.GetValue(survey));
            Console.Out.WriteLine(parsed.GetValue(json) ? JsonSerializer.Serialize(score, Json) : ScoreText.Of(score));
            return score.Good ? 0 : NotGood;
        });
        return command;
    }

    private static JobScore Score(string bench, string sweeps, string? survey)
    {
        var path = BenchLocator.Bench(bench);
        var definition = BenchFile.Read(path);
        var profile = GeneratorProfileFile.Read(BenchLocator.Profile(definition.Profile, Path.GetDirectoryName(path)!));
        return new JobScorer(definition, profile).Score(ResultRows.Sweeps(sweeps), survey is null ? null : ResultRows.Survey(survey));
    }
}
