using AutoSweep.Core.Matching;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>picking-list.json: the parts to be taken, bin by bin, the proof behind them, and what is to be bought.</summary>
/// <param name="Rows">The parts, by bin and then by value.</param>
/// <param name="OutputsWithoutParts">Outputs for which the stock does not suffice.</param>
/// <param name="Outside">Outputs outside the loss limit, reached and proven.</param>
/// <param name="PartsUsed">Parts used, reached and proven.</param>
/// <param name="Moved">Parts moved since the match before, reached and proven.</param>
/// <param name="TotalLossDecibels">The total expected loss in decibels.</param>
/// <param name="TotalLossBoundDecibels">What it is proven not to be below.</param>
/// <param name="ToBuy">What to buy; none where the stock suffices.</param>
public sealed record PickingList(
    IReadOnlyList<PickingRow> Rows,
    IReadOnlyList<int> OutputsWithoutParts,
    LevelProof Outside,
    LevelProof PartsUsed,
    LevelProof Moved,
    double TotalLossDecibels,
    double TotalLossBoundDecibels,
    BuyingList? ToBuy)
{
    /// <summary>The list of a match.</summary>
    public static PickingList From(JobMatchResult result)
    {
        var bins = result.Stock.Bins();
        var rows = result.Match.Outputs.Where(output => output.Combination is not null)
            .SelectMany(output => output.Combination!.Parts.Select(part => new PickingRow(
            part.Bin ?? bins.BinOf(part.Measured.Picofarads), part.Id, part.Measured.Picofarads, part.NominalPicofarads,
                output.Target.Output,
            output.Target.Wanted.Picofarads, output.Combination.Sum.Picofarads, output.LossDecibels!.Value)));
        return new(
            [.. rows.OrderBy(row => row.Bin, StringComparer.Ordinal).ThenBy(row => row.MeasuredPicofarads)
                .ThenBy(row => row.Part, StringComparer.Ordinal)],
            [.. result.Match.Outputs.Where(output => output.Combination is null).Select(output => output.Target.Output)],
            result.Match.Outside, result.Match.PartsUsed, result.Match.Moved, result.Match.TotalLossDecibels,
                result.Match.TotalLossBoundDecibels, result.ToBuy);
    }
}
