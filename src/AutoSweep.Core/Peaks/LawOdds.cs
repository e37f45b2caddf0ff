using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>How probable each law is before the first reading.</summary>
internal static class LawOdds
{
    /// <summary>The natural logarithm of the law's probability, up to a constant.</summary>
    internal static double LogWeight(PeakPrior prior, ResponseLaw law) => law switch
    {
        ResponseLaw.Series => prior.LogOddsSeriesOverShunt,
        ResponseLaw.General => Math.Max(prior.LogOddsSeriesOverShunt, 0) + prior.LogOddsGeneral,
        _ => 0,
    };
}
