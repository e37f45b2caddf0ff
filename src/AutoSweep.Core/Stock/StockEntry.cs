using System.Text.Json.Serialization;
using AutoSweep.Core.Journal;

namespace AutoSweep.Core.Stock;

/// <summary>One line of the stock ledger.</summary>
/// <param name="Sequence">Its place, from 1, without gaps.</param>
/// <param name="At">When it was written.</param>
/// <param name="Event">What happened.</param>
public sealed record StockEntry(long Sequence, DateTimeOffset At, StockEvent Event) : INumberedEntry
{
    /// <inheritdoc/>
    [JsonIgnore]
    public bool IsWhole => Event is not null;
}
