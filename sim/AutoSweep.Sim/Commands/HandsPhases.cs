using AutoSweep.Sim.Hands;

namespace AutoSweep.Sim.Commands;

/// <summary>The phases as the command line writes them.</summary>
internal static class HandsPhases
{
    public const string Expected = "survey, sweep, survey,sweep or none";

    public static IReadOnlyList<HandsPhase> Read(string text) =>
        TryRead(text, out var phases) ? phases : throw new ArgumentException($"Expected {Expected}.", nameof(text));

    public static bool TryRead(string text, out IReadOnlyList<HandsPhase> phases)
    {
        HandsPhase[]? read = text switch
        {
            "survey,sweep" => [HandsPhase.Survey, HandsPhase.Sweep],
            "survey" => [HandsPhase.Survey],
            "sweep" => [HandsPhase.Sweep],
            "none" => [],
            _ => null,
        };
        phases = read ?? [];
        return read is not null;
    }
}
