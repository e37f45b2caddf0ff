using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>The stock as the page lists it.</summary>
public static class StockView
{
    /// <summary>The most rows of a list; who looks for a part narrows the search.</summary>
    public const int MostRows = 200;

    // A value that is looked for may differ by a tolerance letter J (IEC 60062).
    private const double NearShare = 0.05;

    /// <summary>The parts that a search finds, those in their bins unless all are wanted.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="search">A value, such as <c>104.5n</c>: parts near it, the nearest first. Or a piece of an id, bin, dielectric or
    /// state. Empty for all, bin by bin.</param>
    /// <param name="all">Whether fitted and scrapped parts are listed.</param>
    public static IReadOnlyList<Part> Find(StockState stock, string search, bool all)
    {
        var bins = stock.Bins();
        var parts = stock.Parts.Values.Where(part => all || part.Status is PartStatus.Available or PartStatus.Reserved);
        var text = search.Trim();
        if (TypedCapacitance.Picofarads(text) is { } wanted)
        {
            return [.. parts.Where(part => Math.Abs(part.Measured.Picofarads - wanted) <= NearShare * wanted)
                .OrderBy(part => Math.Abs(part.Measured.Picofarads - wanted)).ThenBy(part => part.Id, StringComparer.Ordinal)];
        }

        return [.. parts.Where(part => Has(part, Bin(part, bins), text)).OrderBy(part => Bin(part, bins), StringComparer.Ordinal)
            .ThenBy(part => part.Measured.Picofarads)];
    }

    /// <summary>A part's bin.</summary>
    public static string Bin(Part part, BinPlan bins) => part.Bin ?? bins.BinOf(part.Measured.Picofarads);

    /// <summary>A part's state in words.</summary>
    public static string State(Part part) => StateWord(part.Status) + (part.Place is { } place ? FormattableString.Invariant($", output {place.Output}") : "");

    /// <summary>What is printed on it.</summary>
    public static string Printed(Part part) => string.Join(' ', new[]
    {
        part.NominalPicofarads is { } nominal ? new Capacitance(nominal).ToString() : null, part.ToleranceLetter,
        part.RatedVolts is { } volts ? FormattableString.Invariant($"{volts:0} V") : null, part.Dielectric,
    }.OfType<string>());

    /// <summary>The sums.</summary>
    public static string Totals(StockState stock) => stock.Parts.Count == 0 ? "No parts yet." : string.Join(", ", stock.Parts.Values
        .GroupBy(part => part.Status).OrderBy(group => group.Key)
        .Select(group => FormattableString.Invariant($"{group.Count()} {StateWord(group.Key)}")));

    /// <summary>The bins with their ranges and how many parts lie in each.</summary>
    public static IReadOnlyList<(string Bin, string Range, int Parts)> Bins(StockState stock)
    {
        var plan = stock.Bins();
        var counts = stock.Parts.Values.Where(part => part.Status is PartStatus.Available or PartStatus.Reserved)
            .GroupBy(part => Bin(part, plan)).ToDictionary(group => group.Key, group => group.Count());
        var ranges = plan.Labels().ToDictionary(label => label.Bin, label => label.Range);
        return [.. ranges.Keys.Union(counts.Keys).Order(StringComparer.Ordinal)
            .Select(bin => (bin, Range(ranges, bin), counts.GetValueOrDefault(bin)))];
    }

    /// <summary>The last entry that this page made and that still counts: what an undo takes back. Matches and fittings are the job's, and
    /// undone there.</summary>
    public static StockEntry? LastToTakeBack(StockState stock) => stock.Entries.LastOrDefault(entry =>
        (entry.Event is PartsTakenIn or OldCapacitorRemoved or PartScrapped or PartMeasuredAgain or BinsFixed) && !stock.Idle.Contains(entry.Sequence));

    // A bin without a range is one that a hand wrote on the part; one with an empty range is the only bin.
    private static string Range(Dictionary<string, string> ranges, string bin) =>
        ranges.TryGetValue(bin, out var range) ? (range.Length > 0 ? range : "all values") : "by hand";

    private static bool Has(Part part, string bin, string text) => text.Length == 0
        || new[] { part.Id, bin, part.Dielectric ?? "", State(part) }.Any(field => field.Contains(text, StringComparison.OrdinalIgnoreCase));

    private static string StateWord(PartStatus status) => status switch
    {
        PartStatus.Available => "free", PartStatus.Reserved => "reserved", PartStatus.Fitted => "fitted", _ => "scrapped",
    };
}
