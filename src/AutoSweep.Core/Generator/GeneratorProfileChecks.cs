using AutoSweep.Core.StrictJson;
using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Core.Generator;

/// <summary>What one field of a profile must say of another.</summary>
internal static class GeneratorProfileChecks
{
    // Two tones nearer than this are one to a bench counter: half of it is lost in mains wander between two counts.
    private const double LeastToneDistance = 0.001;

    /// <summary>Every fault of a profile whose fields, taken one by one, are in order.</summary>
    public static IEnumerable<JsonFieldFault> Of(GeneratorProfile profile) =>
    [
        .. Texts(profile), .. Variants(profile), .. Numbers(profile.Outputs), .. Trains(profile), .. Capacitors(profile.Outputs),
        .. Tones(profile),
    ];

    private static IEnumerable<JsonFieldFault> Texts(GeneratorProfile profile)
    {
        if (string.IsNullOrWhiteSpace(profile.Name))
            yield return new("name", "an empty text", "the generator's name", "Write what a technician would call it.");
        if (string.IsNullOrWhiteSpace(profile.Source))
            yield return new("source", "an empty text", "where the figures come from",
                "Name a page, a measurement, or say that it is a guess.");
        foreach (var (index, output) in profile.Outputs.Index().Where(item => string.IsNullOrWhiteSpace(item.Item.Group)))
            yield return new(Field(At(index), "group"), $"an empty text at output {output.Number}", "the name of a group",
                "Write any name that the outputs of one coil and filter family share.");
    }

    private static IEnumerable<JsonFieldFault> Variants(GeneratorProfile profile) =>
        from variant in profile.Variants
        from train in variant.Value.GearTrains.Keys
        where !profile.GearTrains.ContainsKey(train)
        select UnknownTrain(Field(Field(Field("variants", variant.Key), "gearTrains"), train), train, profile);

    private static IEnumerable<JsonFieldFault> Numbers(IReadOnlyList<GeneratorOutput> outputs)
    {
        if (outputs.Count == 0)
            yield return new("outputs", "an empty list", "at least one output", "Write one line for each terminal.");
        for (var index = 1; index < outputs.Count; index++)
            if (outputs[index].Number <= outputs[index - 1].Number)
                yield return new(Field(At(index), "number"), $"output {outputs[index].Number} after output {outputs[index - 1].Number}",
                    "numbers that rise from line to line, each once", "Put the outputs in order, or correct the number.");
    }

    private static IEnumerable<JsonFieldFault> Trains(GeneratorProfile profile) =>
        from item in profile.Outputs.Index()
        where !profile.GearTrains.ContainsKey(item.Item.GearTrain)
        select UnknownTrain(Field(At(item.Index), "gearTrain"), item.Item.GearTrain, profile);

    private static JsonFieldFault UnknownTrain(string path, string name, GeneratorProfile profile) =>
        new(path, $"an unknown gear train \"{name}\"", $"one of {string.Join(", ", profile.GearTrains.Keys)}",
            NearestName.To(name, profile.GearTrains.Keys) is { } nearest
                ? $"Write \"{nearest}\", if that was meant, or add \"{name}\" to gearTrains."
                : $"Correct the name, or add \"{name}\" to gearTrains.");

    private static IEnumerable<JsonFieldFault> Capacitors(IReadOnlyList<GeneratorOutput> outputs)
    {
        foreach (var (index, output) in outputs.Index())
            if (IsTuned(output.Filter) && output.Capacitor is null)
                yield return new(At(index), $"output {output.Number} has a tuned filter without a capacitor", "a field \"capacitor\"",
                    "Add the capacitor, or write \"none\" or \"transformer\" as the filter.");
            else if (!IsTuned(output.Filter) && output.Capacitor is not null)
                yield return new(Field(At(index), "capacitor"), $"a capacitor at output {output.Number}, whose filter is not tuned",
                    "no capacitor", "Remove the capacitor, or write \"tunedLc\" or \"retrofitLc\" as the filter.");
    }

    // A copied line whose teeth were not changed shows as two equal tones; a counter could never tell the two terminals apart.
    private static IEnumerable<JsonFieldFault> Tones(GeneratorProfile profile)
    {
        var rising = profile.Outputs.Index().Where(item => profile.GearTrains.ContainsKey(item.Item.GearTrain))
            .OrderBy(item => profile.ToneOf(item.Item)).ToList();
        return from pair in rising.Zip(rising.Skip(1))
               let tone = profile.ToneOf(pair.Second.Item)
               where tone.Hertz < profile.ToneOf(pair.First.Item).Hertz * (1 + LeastToneDistance)
               select new JsonFieldFault(At(Math.Max(pair.First.Index, pair.Second.Index)),
                   $"outputs {pair.First.Item.Number} and {pair.Second.Item.Number} both give {tone}",
                   "tones at least 0.1 % apart, so that a tone names its output",
                   "Check gearTrain and wheelTeeth of both. Where two terminals carry one wheel's tone, list one of them.");
    }

    private static bool IsTuned(FilterKind filter) => filter is FilterKind.TunedLc or FilterKind.RetrofitLc;

    private static string At(int index) => Item("outputs", index);
}
