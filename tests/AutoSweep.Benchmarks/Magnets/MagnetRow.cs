using AutoSweep.Sources.Magnets;

namespace AutoSweep.Benchmarks.Magnets;

/// <summary>One way of working and how it did.</summary>
internal sealed record MagnetRow(string Way, RodScore Score);
