namespace AutoSweep.Core.Stock;

/// <summary>Why the stock does not allow an event: an expected outcome where several benches share one ledger.</summary>
/// <param name="Found">What was found.</param>
/// <param name="Expected">What was expected.</param>
/// <param name="WhatToDo">What to do.</param>
public sealed record StockRefusal(string Found, string Expected, string WhatToDo)
{
    /// <summary>The refusal as a fault, where nobody can act on it but the person.</summary>
    public BenchFaultException AsFault() => new(BenchFault.StockRefused, Found, Expected, WhatToDo);
}
