using System.Diagnostics;
using AutoSweep.Core.Matching;
using AutoSweep.Sources.Matching;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Matching;

/// <summary>The match of a whole generator beside what hands do, and the packing model on published instances.</summary>
internal sealed class MatchingBenchmark(TimeProvider time) : IBenchmark
{
    private const int Seed = 27_182;

    private static readonly (string Name, int Outputs, int Parts)[] Sizes = [("43x300", 43, 300), ("86x2000", 86, 2000)];

    public string Name => "matching";

    public string Summary => "the match beside best-pair-first, 43 outputs x 300 parts and 86 x 2,000, and OR-Library's assignment problems";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        MatchRun[] runs = [.. Sizes.Select(size => MatchRun.Of(size.Name, size.Outputs, size.Parts, Seed, time))];
        var gap = AssignmentRun.All(time);
        var megabytes = Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0;
        console.Write(MatchingTables.Matches(runs));
        console.Write(MatchingTables.Assignments(gap));
        return [.. runs.SelectMany(Figures), .. Figures(gap), new("matching.peak_memory_mebibytes", megabytes, 1024)];
    }

    private static IEnumerable<Figure> Figures(MatchRun run) =>
    [
        new($"matching.{run.Name}.gap_percent", 100 * run.Gap, 1),
        new($"matching.{run.Name}.seconds", run.Seconds, 10),
        new($"matching.{run.Name}.outside", run.Ours.Outside.Value, run.Hands.Outside),
        new($"matching.{run.Name}.parts_used", run.Ours.PartsUsed.Value, run.Hands.PartsUsed + (2 * Math.Max(0, run.Hands.Outside - run.Ours.Outside.Value))),
    ];

    private static IEnumerable<Figure> Figures(IReadOnlyList<AssignmentRun> runs) =>
    [
        new("matching.or_library_missed", runs.Count(run => run.Profit != run.Instance.KnownOptimum || !run.Proven), 0),
        new("matching.or_library_slowest_seconds", runs.Max(run => run.Seconds), 10),
    ];
}
