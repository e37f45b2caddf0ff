using AutoSweep.Core.Decades;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>Ends a search by hand: good enough, read on both flanks, and the last reading on top, where the box then stands to be measured.</summary>
internal static class DialledBoundRule
{
    // Three unknowns that count, one that can contradict; a dialing costs a minute.
    private const int Fewest = 4;

    // Peak and trap are two unknowns more.
    private const int FewestForGeneral = 6;

    // In half-widths: readings between these on either side are flanks. The goal is a tenth of a half-width, so farther ones serve, too.
    private const double Nearest = 0.25;
    private const double Farthest = 6;

    // In half-widths: a reading this near is on top (0.26 dB down).
    private const double OnTop = 0.25;

    // The reading on top has to be taken anyhow, and tells how high the flanks stand: it is taken while the bound is still this many times too wide.
    private const double NearlyThere = 15;

    internal static SearchMove? Consider(SearchState state, DecadeBox box)
    {
        if (state.Mixture is not { } mixture || mixture.Misfits)
            return null;
        var (limit, bound) = (state.Options.LossBoundDecibels, mixture.LossBoundDecibels);
        var fewest = mixture.Best.Law == ResponseLaw.General ? FewestForGeneral : Fewest;
        if (bound >= NearlyThere * limit || state.Log.Used.Length < fewest - 1)
            return null;
        if (MissingFlank(state, mixture) is { } side)
            return SearchMove.Read(Coarse(state, box, Math.Exp(mixture.LogPeak) * (1 + (side * BoundRule.Wanted * mixture.RelativeHalfWidth)), 0.3));
        if (!HasTop(state, mixture, bound < limit))
            return SearchMove.Read(Coarse(state, box, Math.Exp(mixture.LogPeak), OnTop / 2));
        return bound < limit && state.Log.Used.Length >= fewest ? SearchMove.Stop(PeakStopReason.BoundReached) : null;
    }

    // Before the end any reading on top will do; at the end the box must stand there.
    private static bool HasTop(SearchState state, LawMixture mixture, bool atTheEnd) => state.Log.Trace.TakeLast(atTheEnd ? 1 : state.Log.Told).Any(point =>
        Math.Abs((point.Reading.Capacitance.Picofarads / Math.Exp(mixture.LogPeak)) - 1) < OnTop * mixture.RelativeHalfWidth);

    private static int? MissingFlank(SearchState state, LawMixture mixture)
    {
        var places = state.Log.Trace.Where(point => point.Used)
            .Select(point => ((point.Reading.Capacitance.Picofarads / Math.Exp(mixture.LogPeak)) - 1) / mixture.RelativeHalfWidth).ToArray();
        return !places.Any(place => place is < -Nearest and > -Farthest) ? -1 : !places.Any(place => place is > Nearest and < Farthest) ? 1 : null;
    }

    // The fewest dials that come within so many half-widths.
    private static double Coarse(SearchState state, DecadeBox box, double place, double within)
    {
        var now = box.Nearest(state.Log.Last.Capacitance.Picofarads);
        var width = state.Mixture!.RelativeHalfWidth * place;
        var near = box.Around(place, now).Where(setting => Math.Abs(box.Total(setting).Picofarads - place) < within * width)
            .OrderBy(setting => setting.TurnsFrom(now)).FirstOrDefault();
        return box.Total(near ?? box.Nearest(place, now)).Picofarads;
    }
}
