using AutoSweep.Sources;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Peaks;

/// <summary>The peak search on 10,000 random sources, beside methods that know no response law.</summary>
internal sealed class PeakBenchmark(TimeProvider time) : IBenchmark
{
    // Another seed than the tests': a search tuned to theirs would show here.
    private const int Seed = 31_415;
    private const int Sources = 10_000;

    public string Name => "peaks";

    public string Summary => "the peak search beside golden section, Brent and a sweep, on 10,000 random sources";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        var sources = SourceLibrary.Take(Sources, Seed);
        var began = time.GetTimestamp();
        var score = SearchScore.Of(sources);
        var seconds = time.GetElapsedTime(began).TotalSeconds;
        var estimated = SearchScore.Of([.. sources.Take(Sources / 4).Select(source => source with { NoiseSamples = 3 })]);
        var groups = SourceLibrary.Groups(60, 8, Seed).AsParallel().AsOrdered().Select(SearchRun.OfGroup).ToArray();
        var taught = new SearchScore([.. groups.SelectMany(outcomes => outcomes.Skip(3))]);

        console.Write(PeakTables.Rivals(score));
        console.Write(PeakTables.Families(score));
        console.Write(PeakTables.Conditions(("true noise told", score), ("noise told from 3 samples", estimated), ("after 3 outputs of the group", taught)));
        return [.. Promised(score), .. Beyond(score, estimated, taught), new("peaks.search_milliseconds", 1e3 * seconds / Sources, 12)];
    }

    // What the project promises of the search.
    private static IEnumerable<Figure> Promised(SearchScore score) =>
    [
        new("peaks.loss99_series_decibels", score.LossQuantile(0.99, SourceFamily.Series), 0.01),
        new("peaks.loss99_shunt_decibels", score.LossQuantile(0.99, SourceFamily.Shunt), 0.01),
        new("peaks.loss99_rest_decibels", score.LossQuantile(0.99, SourceFamily.Coupled, SourceFamily.Tapped), 0.05),
        new("peaks.readings_median", score.MedianReadings, 6),
        new("peaks.outside_99_percent_interval", 100 * score.ShareOutside, 2),
        new("peaks.bound_not_reached_percent", 100 * score.ShareFailed, 1),
    ];

    private static IEnumerable<Figure> Beyond(SearchScore score, SearchScore estimated, SearchScore taught) =>
    [
        new("peaks.error_over_cramer_rao_bound", score.ErrorOverCramerRaoBound, 2.5),
        new("peaks.three_samples_loss99_exact_decibels", estimated.LossQuantile(0.99, SourceFamily.Series, SourceFamily.Shunt), 0.01),
        new("peaks.three_samples_outside_99_percent_interval", 100 * estimated.ShareOutside, 2),
        new("peaks.taught_readings_median", taught.MedianReadings, 5),
        new("peaks.taught_loss99_decibels", taught.LossQuantile(0.99, Enum.GetValues<SourceFamily>()), 0.05),
    ];
}
