using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What a search wants next: a reading, or nothing more.</summary>
public abstract record PeakStep
{
    private PeakStep()
    {
    }

    /// <summary>Set this capacitance, or the nearest that can be set, read the level, and tell the search.</summary>
    /// <param name="Capacitance">The wanted calibrated total.</param>
    public sealed record Read(Capacitance Capacitance) : PeakStep;

    /// <summary>The search is done.</summary>
    /// <param name="Result">Its answer.</param>
    public sealed record Done(PeakResult Result) : PeakStep;
}
