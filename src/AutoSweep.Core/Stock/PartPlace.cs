namespace AutoSweep.Core.Stock;

/// <summary>The output of a job for which a part is reserved or in which it is fitted.</summary>
/// <param name="Job">The job's name in the ledger.</param>
/// <param name="Output">The output's number.</param>
public sealed record PartPlace(string Job, int Output);
