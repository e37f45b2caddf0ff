namespace AutoSweep.Core.Journal;

/// <summary>A line of the journal that cannot be trusted.</summary>
/// <param name="Line">Its line number, from 1.</param>
/// <param name="Trouble">What is wrong with it.</param>
public sealed record DamagedLine(int Line, string Trouble);
