using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Stock;

/// <summary>What a job's match came to.</summary>
/// <param name="Match">The match with its proof.</param>
/// <param name="Stock">The stock with the parts reserved.</param>
/// <param name="ToBuy">What to buy where the stock does not suffice; none where it does.</param>
public sealed record JobMatchResult(MatchResult Match, StockState Stock, BuyingList? ToBuy);
