using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>Ends the search when the answer is good enough and does not hang on one law.</summary>
internal static class BoundRule
{
    // Readings this far from the peak on both flanks, in half-widths, give the same peak under every law to first order.
    private const double Nearest = 0.3;
    private const double Farthest = 1.6;
    internal const double Wanted = 0.8;

    // Five readings against four unknowns leave one that can contradict; a group that has taught the law can do with four.
    private const int Fewest = 5;
    private const int FewestWhenTaught = 4;

    // Two unknowns more: with five readings the general law could follow anything.
    private const int FewestForGeneral = 7;

    // Odds of e^5 (150 to 1) gathered over the group.
    private const double TaughtLogOdds = 5;

    internal static SearchMove? Consider(SearchState state)
    {
        if (state.Options.Box is { } box)
            return DialledBoundRule.Consider(state, box);
        if (state.Mixture is not { } mixture || state.Log.Used.Length < FewestFor(state.Prior, mixture) - 1)
            return null;
        var limit = state.Options.LossBoundDecibels;
        if (mixture.LossBoundDecibels < 4 * limit && MissingFlank(state, mixture) is { } side)
            return SearchMove.Read(Math.Exp(mixture.LogPeak) * (1 + side * Wanted * mixture.RelativeHalfWidth));
        return mixture.LossBoundDecibels < limit && !mixture.Misfits && state.Log.Used.Length >= FewestFor(state.Prior, mixture)
            ? SearchMove.Stop(PeakStopReason.BoundReached)
            : null;
    }

    private static int FewestFor(PeakPrior prior, LawMixture mixture)
    {
        if (mixture.Best.Law == ResponseLaw.General)
            return FewestForGeneral;
        return Math.Abs(prior.LogOddsSeriesOverShunt) >= TaughtLogOdds && prior.LogOddsGeneral <= -2 ? FewestWhenTaught : Fewest;
    }

    private static int? MissingFlank(SearchState state, LawMixture mixture)
    {
        var (below, above) = (false, false);
        foreach (var point in state.Log.Trace.Where(point => point.Used))
        {
            var place = (point.Reading.Capacitance.Picofarads / Math.Exp(mixture.LogPeak) - 1) / mixture.RelativeHalfWidth;
            above |= place is > Nearest and < Farthest;
            below |= place is < -Nearest and > -Farthest;
        }
        return !below ? -1 : !above ? 1 : null;
    }
}
