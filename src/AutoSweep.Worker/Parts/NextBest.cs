using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>Finds other parts for one output, without touching what is reserved for the others.</summary>
/// <param name="options">The match's limits.</param>
/// <param name="clock">The clock of the search's time limit.</param>
public sealed class NextBest(MatchOptions options, TimeProvider clock)
{
    /// <summary>The best combination of free parts that leaves some out.</summary>
    /// <param name="target">The output.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="without">Parts that were tried already.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>None when nothing within the loss limit is free.</returns>
    public Combination? For(MatchTarget target, StockState stock, IReadOnlySet<string> without, CancellationToken cancellationToken)
    {
        var free = stock.Parts.Values.Where(part => part.Status == PartStatus.Available && !without.Contains(part.Id)).ToList();
        var result = new Matcher(options, clock).Match(new([target], free), cancellationToken);
        return result.Outputs is [{ WithinLimit: true, Combination: { } combination }] ? combination : null;
    }
}
