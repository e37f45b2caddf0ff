using System.Globalization;
using AutoSweep.Core.Peaks;
using AutoSweep.Sources;
using Spectre.Console;

namespace AutoSweep.Benchmarks.ByHand;

/// <summary>A sweep with a hand-dialled box of 1 % and levels of three digits, on the sources of the peaks benchmark.</summary>
internal sealed class HandBenchmark : IBenchmark
{
    private const int Seed = 31_415;
    private const int Sources = 10_000;

    public string Name => "byhand";

    public string Summary => "a sweep by hand: dialled box of 1 %, three digits read by eye, on 10,000 random sources";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        var sources = SourceLibrary.Take(Sources, Seed);
        var by = Enum.GetValues<BoxKnowledge>().ToDictionary(how => how, how => Score(sources, how));
        console.Write(Table("By what is known of the box", by.Select(one => (one.Key.ToString(), one.Value))));
        var counted = by[BoxKnowledge.MeasuredAtTheEnd];
        console.Write(Table("Measured at the end, by family", counted.GroupBy(one => one.Source.Family).OrderBy(one => one.Key).Select(one => (one.Key.ToString(), one.ToArray()))));
        return
        [
            new("byhand.dialings_median", Quantile(0.5, counted, one => one.Dialings), 5),
            new("byhand.loss99_decibels", Quantile(0.99, counted, one => one.LossDecibels), 0.05),
            // The bound is one of 95 %; two points more are allowed for laws that fit only nearly.
            new("byhand.outside_bound_percent", 100 * Share(counted, one => one.IsOutside), 7),
            new("byhand.bound_not_reached_percent", 100 * Share(counted, one => one.Result.Reason != PeakStopReason.BoundReached), 1),
            new("byhand.calibrated_dialings_median", Quantile(0.5, by[BoxKnowledge.CalibratedOnce], one => one.Dialings), 5),
            new("byhand.calibrated_loss99_decibels", Quantile(0.99, by[BoxKnowledge.CalibratedOnce], one => one.LossDecibels), 0.05),
            new("byhand.printed_outside_bound_percent", 100 * Share(by[BoxKnowledge.PrintedOnly], one => one.IsOutside), 5),
        ];
    }

    private static HandOutcome[] Score(IReadOnlyList<RandomSource> sources, BoxKnowledge how) =>
        [.. sources.AsParallel().AsOrdered().Select(source => HandRun.Of(source, how))];

    private static double Quantile(double share, HandOutcome[] outcomes, Func<HandOutcome, double> value) => SearchScore.Quantile(share, outcomes.Select(value));

    private static double Share(HandOutcome[] outcomes, Func<HandOutcome, bool> holds) => outcomes.Count(holds) / (double)outcomes.Length;

    private static Table Table(string title, IEnumerable<(string Name, HandOutcome[] Outcomes)> rows)
    {
        var table = new Table().Title(title).AddColumns("", "dialings, half", "dialings, 95 %", "dials turned, mean", "loss, half", "loss, 99 %", "outside bound", "bound reached");
        foreach (var (name, all) in rows)
            table.AddRow(name, Text(Quantile(0.5, all, one => one.Dialings)), Text(Quantile(0.95, all, one => one.Dialings)), Text(all.Average(one => one.Turns)),
                Text(Quantile(0.5, all, one => one.LossDecibels)), Text(Quantile(0.99, all, one => one.LossDecibels)),
                Text(100 * Share(all, one => one.IsOutside)) + " %", Text(100 * Share(all, one => one.Result.Reason == PeakStopReason.BoundReached)) + " %");
        return table;
    }

    private static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
