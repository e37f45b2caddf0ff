using AutoSweep.Core.Decades;
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

    /// <summary>The box that a person dials; none where relays set the capacitance.</summary>
    /// <remarks>
    /// Each reading then costs a minute: the search ends as soon as its bound is reached, with a reading on top as its last, prefers
    /// settings with few dials to turn, and reckons with what the box's capacitors may be off.
    /// </remarks>
    public DecadeBox? Box { get; init; }

    /// <summary>The limits for a box that is dialled by hand.</summary>
    /// <param name="box">The box.</param>
    /// <returns>A bound of 0.035 dB at 95 %, with which 99 in 100 stay under 0.05 dB (byhand benchmark), and at most fourteen readings.</returns>
    public static PeakSearchOptions ByHand(DecadeBox box)
    {
        ArgumentNullException.ThrowIfNull(box);
        return new() { Smallest = new(Math.Max(1, box.Smallest.Picofarads)), Largest = box.Largest, LossBoundDecibels = 0.035, Budget = 14, Box = box };
    }
}
