using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What a rule of the search wants: a reading at a place, or an end.</summary>
/// <param name="Picofarads">Where to read.</param>
/// <param name="Reason">Why to end; none to go on.</param>
internal readonly record struct SearchMove(double Picofarads, PeakStopReason? Reason)
{
    internal static SearchMove Read(double picofarads) => new(picofarads, null);

    internal static SearchMove Read(Capacitance capacitance) => new(capacitance.Picofarads, null);

    internal static SearchMove Stop(PeakStopReason reason) => new(double.NaN, reason);
}
