using AutoSweep.Core.Fitting;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>Fits every law to the readings, from the net's best points and from the last fits.</summary>
internal static class LawFitter
{
    private static readonly ResponseLaw[] Laws = [ResponseLaw.Series, ResponseLaw.Shunt, ResponseLaw.General];

    // Two maxima of the net closer than this many net points are one.
    private const double SamePeak = 0.06;

    // A second maximum e^-7 as probable as the first is not worth a fit.
    private const double WorthAFit = 7;

    // Where nothing fits, or the peak strays from what was believed, weaker beliefs, stronger hum and every kind of trap are tried.
    internal static LawMixture Fit(PeakGrid grid, FitPoint[] points, PeakPrior prior, LawMixture? last)
    {
        var mixture = Fit(grid, points, prior, last, thorough: false);
        return mixture.Fits.Count > 0 && (mixture.Misfits || mixture.Best.Strays)
            ? Fit(grid, points, Loosened(prior), mixture, thorough: true)
            : mixture;
    }

    private static LawMixture Fit(PeakGrid grid, FitPoint[] points, PeakPrior prior, LawMixture? last, bool thorough)
    {
        var fits = new List<LawFit>();
        foreach (var law in Laws)
        {
            var model = new LawModel(law, points, prior, thorough ? SlowEffects.StrongHumPowerSd : SlowEffects.HumPowerSd);
            foreach (var start in Starts(grid, law, last, thorough))
                AddDistinct(fits, new LawFit(law, LevenbergMarquardt.Fit(model, start, 1e-4, 60), prior));
        }
        return new LawMixture(fits, points.Length);
    }

    // An expected value that the readings contradict must not hold the fit back: within a factor of e, either way, is then believed.
    private static PeakPrior Loosened(PeakPrior prior) =>
        prior with { LogSpread = Math.Max(prior.LogSpread, 1), LogSpreadOfQ = Math.Max(prior.LogSpreadOfQ, 0.8) };

    private static IEnumerable<double[]> Starts(PeakGrid grid, ResponseLaw law, LawMixture? last, bool thorough)
    {
        var best = grid.Best(law, double.NaN);
        yield return grid.Start(best);
        var second = grid.Best(law, grid.Peak(best));
        if (second >= 0 && grid.LogPosterior(second) > grid.LogPosterior(best) - WorthAFit)
            yield return grid.Start(second);
        if (thorough)
            foreach (var k in grid.BestOfEverySlope(law))
                yield return grid.Start(k);
        foreach (var fit in last?.Fits ?? [])
            if (fit.Law == law)
                yield return fit.Parameters.ToArray();
    }

    private static void AddDistinct(List<LawFit> fits, LawFit fit)
    {
        if (!fit.IsUsable)
            return;
        var same = fits.FindIndex(other => other.Law == fit.Law && Math.Abs(other.LogPeak - fit.LogPeak) < SamePeak);
        if (same < 0)
            fits.Add(fit);
        else if (fit.LogWeight > fits[same].LogWeight)
            fits[same] = fit;
    }
}
