using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>One line of the picking list: an output, what it wants, and the parts that are reserved for it.</summary>
/// <param name="Target">The output and what it wants.</param>
/// <param name="Combination">The parts.</param>
public sealed record FitLine(MatchTarget Target, Combination Combination)
{
    /// <summary>The lines of a job that are still to be fitted, in the order of walking.</summary>
    /// <param name="targets">What the outputs want.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="job">The job's name in the ledger.</param>
    /// <param name="byBins">Whether to open each bin once, in ascending order; otherwise by outputs.</param>
    public static IReadOnlyList<FitLine> Of(IEnumerable<MatchTarget> targets, StockState stock, string job, bool byBins)
    {
        var reserved = stock.HeldBy(job, PartStatus.Reserved);
        var lines = targets.Where(target => reserved.ContainsKey(target.Output)).Select(target => new FitLine(target, Combination.Of(reserved[target.Output])));
        var bins = stock.Bins();
        return byBins
            ? [.. lines.OrderBy(line => line.Combination.Parts[0].Bin ?? bins.BinOf(line.Combination.Parts[0].Measured.Picofarads), StringComparer.Ordinal).ThenBy(line => line.Target.Output)]
            : [.. lines.OrderBy(line => line.Target.Output)];
    }

    /// <summary>The parts with value and bin, as a person goes to fetch them.</summary>
    public string InWords(StockState stock)
    {
        var bins = stock.Bins();
        return string.Join(" + ", Combination.Parts.Select(part => $"{part.Id} {part.Capacitance} (bin {part.Bin ?? bins.BinOf(part.Measured.Picofarads)})"));
    }

    /// <summary>The ids of the parts.</summary>
    public IReadOnlyList<string> Ids => [.. Combination.Parts.Select(part => part.Id)];
}
