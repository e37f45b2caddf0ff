using System.Diagnostics;
using AutoSweep.Core.Matching;
using AutoSweep.Sources.Matching;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Matching;

/// <summary>The match of a whole generator beside what hands do, and the packing model on published instances.</summary>
internal sealed class MatchingBenchmark(TimeProvider time) : IBenchmark
{
    private const int Seed = 27_182;

    private const int Shops = 5;

    // The last has hardly enough parts: there the hands' way starves the last outputs.
    private static readonly (string Name, int Outputs, int Parts)[] Sizes = [("43x300", 43, 300), ("86x2000", 86, 2000),
        ("43x100", 43, 100)];

    public string Name => "matching";

    public string Summary => "the match beside best pair first, up to 86 outputs x 2,000 parts, and OR-Library's assignment problems";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        MatchRun[] runs = [.. Sizes.SelectMany(size => Enumerable.Range(0, Shops)
            .Select(shop => MatchRun.Of(size.Name, size.Outputs, size.Parts, Seed + shop, time)))];
        var gap = AssignmentRun.All(time);
        var megabytes = Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0;
        console.Write(MatchingTables.Matches(runs));
        console.Write(MatchingTables.Assignments(gap));
        return [.. runs.GroupBy(run => run.Name).SelectMany(size => Figures(size.Key, [.. size])), .. Figures(gap),
            new("matching.peak_memory_mebibytes", megabytes, 1024)];
    }

    // The worst of the shops for gap and time; sums over the shops beside what hands come to. An output without parts saves none: it
    // counts as two.
    private static IEnumerable<Figure> Figures(string name, IReadOnlyList<MatchRun> runs) =>
    [
        new($"matching.{name}.gap_percent", runs.Max(run => 100 * run.Gap), 1),
        new($"matching.{name}.seconds", runs.Max(run => run.Seconds), 10),
        new($"matching.{name}.outside", runs.Sum(run => run.Ours.Outside.Value), runs.Sum(run => run.Hands.Outside)),
        new($"matching.{name}.parts_used", runs.Sum(run => run.Ours.PartsUsed.Value + (2 * run.Ours.Outside.Value)),
            runs.Sum(run => run.Hands.PartsUsed + (2 * run.Hands.Outside))),
    ];

    private static IEnumerable<Figure> Figures(IReadOnlyList<AssignmentRun> runs) =>
    [
        new("matching.or_library_missed", runs.Count(run => run.Profit != run.Instance.KnownOptimum || !run.Proven), 0),
        new("matching.or_library_slowest_seconds", runs.Max(run => run.Seconds), 10),
    ];
}
