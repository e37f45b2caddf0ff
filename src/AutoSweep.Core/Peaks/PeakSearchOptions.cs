using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>The limits within which a peak is searched.</summary>
public sealed record PeakSearchOptions
{
    /// <summary>The smallest capacitance that can be set (the fixture's stray).</summary>
    public required Capacitance Smallest { get; init; }

    /// <summary>The largest capacitance that can be set.</summary>
    public required Capacitance Largest { get; init; }

    /// <summary>The search is done when the 95 % bound on the level lost at its answer is under this many decibels.</summary>
    /// <value>Default 0.01 dB.</value>
    public double LossBoundDecibels { get; init; } = 0.01;

    /// <summary>The most readings that one search may ask for.</summary>
    /// <value>Default 16.</value>
    public int Budget { get; init; } = 16;
}
