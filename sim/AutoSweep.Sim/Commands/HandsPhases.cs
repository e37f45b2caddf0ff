using System.Text.Json;
using AutoSweep.Sim.Hands;

namespace AutoSweep.Sim.Commands;

/// <summary>The phases as the command line writes them.</summary>
internal static class HandsPhases
{
    public const string Expected = "survey, sweep, parts, fit, check, level, asLeft, some of them joined by commas, or none";

    public static IReadOnlyList<HandsPhase> Read(string text) =>
        TryRead(text, out var phases) ? phases : throw new ArgumentException($"Expected {Expected}.", nameof(text));

    public static bool TryRead(string text, out IReadOnlyList<HandsPhase> phases)
    {
        var words = text == "none" ? [] : text.Split(',');
        phases = [.. words.SelectMany(Phase)];
        return phases.Count == words.Length;
    }

    private static IEnumerable<HandsPhase> Phase(string word) =>
        Enum.GetValues<HandsPhase>().Where(phase => JsonNamingPolicy.CamelCase.ConvertName(phase.ToString()) == word);
}
