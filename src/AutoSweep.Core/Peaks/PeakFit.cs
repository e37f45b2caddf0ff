using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What a search believes of the peak while it goes on, for a live picture.</summary>
/// <param name="Peak">Where the level is highest.</param>
/// <param name="PeakSdPicofarads">One standard deviation of <paramref name="Peak"/>, spread between laws included.</param>
/// <param name="HalfWidthPicofarads">Half the distance between the half-power capacitances.</param>
/// <param name="Law">The law that explains the readings best so far.</param>
/// <param name="Curve">That law's curve through the readings.</param>
/// <param name="LossBoundDecibels">The 95 % bound on the level lost at <paramref name="Peak"/>.</param>
public sealed record PeakFit(
    Capacitance Peak,
    double PeakSdPicofarads,
    double HalfWidthPicofarads,
    ResponseLaw Law,
    ResponseCurve Curve,
    double LossBoundDecibels);
