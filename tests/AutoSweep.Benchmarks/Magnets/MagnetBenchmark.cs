using AutoSweep.Core.Magnets;
using AutoSweep.Sources.Magnets;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Magnets;

/// <summary>The guidance at a thousand simulated rods beside fixed small steps.</summary>
internal sealed class MagnetBenchmark : IBenchmark
{
    private const int Rods = 1_000;
    private const int Seed = 4_711;

    public string Name => "magnets";

    public string Summary => "magnet guidance on 1,000 simulated rods beside fixed steps: moves, contacts, endings";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        var rods = RodLibrary.Take(Rods, Seed);
        var (hand, options) = (new RodHand(), new MagnetGuidanceOptions());
        var guided = RodScore.Guided(rods, hand, options);
        var wide = RodScore.Guided(rods, hand, options with { HalfBandDecibels = 0.5 });
        var unmeasured = RodScore.Guided(rods, hand, options, withLeaf: false);
        MagnetRow[] rows =
        [
            new("guided, band ±0.25 dB, leaf put in", guided),
            new("guided, band ±0.5 dB, leaf put in", wide),
            new("guided, band ±0.25 dB, no leaf", unmeasured),
            .. new[] { 0.005, 0.02, 0.05, 0.1 }.Select(step => new MagnetRow(
                FormattableString.Invariant($"fixed steps of {step} mm"), RodScore.FixedSteps(rods, hand, options, step))),
            .. new[] { 0.005, 0.01 }.Select(locking => new MagnetRow(
                FormattableString.Invariant($"guided, locking shifts {locking} mm"), RodScore.Guided(rods, hand with { LockingSd = locking }, options))),
            .. new[] { 0.05, 0.1, 0.2 }.Select(thick => new MagnetRow(
                FormattableString.Invariant($"guided, leaf read {thick} mm too thick"), RodScore.Guided(rods, hand, options, tooThick: thick))),
            new("guided, hand 40 % off", RodScore.Guided(rods, hand with { Share = 0.4 }, options)),
        ];
        console.Write(MagnetTables.Ways(rows));
        console.Write(MagnetTables.Teeth(guided));
        return
        [
            new("magnets.median_moves", guided.MedianMoves(guided.Reachable), 3),
            new("magnets.contacts", guided.Contacts + wide.Contacts + unmeasured.Contacts, 0),
            new("magnets.share_not_in_band_percent", 100 * (1 - RodScore.Share(guided.Reachable, GuidanceEnding.InBand)), 10),
            new("magnets.contacts_in_20_other_seeds", Enumerable.Range(1, 20)
                .Sum(seed => RodScore.Guided(RodLibrary.Take(Rods, seed), hand, options).Contacts), 0),
        ];
    }
}
