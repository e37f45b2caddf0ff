using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>Writes the hands' script: the survey in order, the sweep in a mixed order, with some mistakes if wanted.</summary>
internal static class HandsScripts
{
    public static HandsDefinition Draw(IReadOnlyList<OutputDefinition> outputs, bool trouble, Random random)
    {
        var survey = outputs.Select(output => Step(output.Number)).ToList();
        var mixed = outputs.Where(output => output.Filter is not null).Select(output => output.Number).ToArray();
        random.Shuffle(mixed);
        var sweep = mixed.Select(Step).ToList();
        if (trouble) AddMistakes(survey, sweep, outputs);
        return new() { PauseSeconds = 1.5, ReactionSeconds = 0.5, PatienceSeconds = 240, Survey = survey, Sweep = sweep };
    }

    private static HandsStep Step(int output) => new() { Output = output };

    private static void AddMistakes(List<HandsStep> survey, List<HandsStep> sweep, IReadOnlyList<OutputDefinition> outputs)
    {
        var third = survey.Count / 3;
        survey[third] = survey[third] with { PauseSeconds = 30, Note = "slow" };
        survey.Insert(2 * third, survey[third / 2] with { Note = "wrong: done already" });
        var plain = outputs.First(output => output.Filter is null).Number;
        var half = sweep.Count / 2;
        sweep[half] = sweep[half] with { PauseSeconds = 25, Note = "slow" };
        sweep.Insert(half, new() { Output = plain + 1, Note = "wrong: has no filter" });
        sweep.Insert(half + 3, sweep[half / 2] with { Note = "repeated: done already" });
    }
}
