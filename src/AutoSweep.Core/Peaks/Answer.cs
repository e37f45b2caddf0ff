using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>Puts what a search knows at its end into a result.</summary>
internal static class Answer
{
    // Beyond e^30 the odds say only "certain"; Laplace's approximation is not to be taken further.
    private const double MostLogOdds = 30;

    internal static PeakResult Of(SearchState state, PeakStopReason reason)
    {
        PeakTracePoint[] trace = [.. state.Log.Trace];
        var fitted = reason is PeakStopReason.BoundReached or PeakStopReason.BudgetSpent or PeakStopReason.PeakAtEdge;
        if (!fitted || state.Mixture is not { } mixture)
            return new PeakResult { Reason = reason, Peak = state.Log.Loudest?.Capacitance, Trace = trace };
        var fit = mixture.Summary();
        return new PeakResult
        {
            Reason = reason,
            Peak = fit.Peak,
            PeakSdPicofarads = fit.PeakSdPicofarads,
            HalfWidthPicofarads = fit.HalfWidthPicofarads,
            Q = fit.Curve.Response.Q,
            LevelAtPeak = fit.Curve.LevelAtPeak,
            Hum = fit.Curve.Hum,
            Law = fit.Law,
            LogOddsSeriesOverShunt = Odds(mixture.LogEvidence(ResponseLaw.Series) - mixture.LogEvidence(ResponseLaw.Shunt)),
            LogOddsGeneral = Odds(mixture.LogEvidence(ResponseLaw.General)
                - Math.Max(mixture.LogEvidence(ResponseLaw.Series), mixture.LogEvidence(ResponseLaw.Shunt))),
            LossBoundDecibels = fit.LossBoundDecibels,
            Trace = trace,
        };
    }

    private static double Odds(double logOdds) => double.IsNaN(logOdds) ? 0 : Math.Clamp(logOdds, -MostLogOdds, MostLogOdds);
}
