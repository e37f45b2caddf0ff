using AutoSweep.Core.Decades;

namespace AutoSweep.Core.Peaks;

/// <summary>Chooses a reading by hand: of the settings that teach nearly as much as the best, the one with fewest dials to turn.</summary>
internal static class DialPlan
{
    // What a dial less to turn may cost of what the reading teaches.
    private const double NearlyAsMuch = 0.95;

    // In standard deviations of the belief: a far-off reading tells which side the peak is on, and hardly more (byhand benchmark).
    private const double Reach = 1.6;

    internal static double Choose(SearchState state, DecadeBox box)
    {
        var now = box.Nearest(state.Log.Last.Capacitance.Picofarads);
        var settings = Places(state).SelectMany(place => box.Around(place, now))
            .Distinct()
            .Where(setting => box.Total(setting) is var total && total >= state.Options.Smallest && total <= state.Options.Largest)
            .Select(setting => (Setting: setting, Total: (double)box.Total(setting).Picofarads))
            .ToArray();
        var gain = Gain(state, box);
        var judged = settings.Select(one => (one.Total, Turns: one.Setting.TurnsFrom(now), Gain: gain(one.Setting, one.Total))).ToArray();
        var enough = NearlyAsMuch * judged.Max(one => one.Gain);
        return judged.Where(one => one.Gain >= enough).OrderBy(one => one.Turns).ThenByDescending(one => one.Gain).First().Total;
    }

    private static IEnumerable<double> Places(SearchState state)
    {
        if (state.Mixture is not { } mixture)
            return Enumerable.Range(0, GridPlan.Candidates).Select(i => GridPlan.Candidate(state.Prior, i))
                .Where(place => Math.Abs(Math.Log(place / state.Prior.Expected.Picofarads)) <= Reach * state.Prior.LogSpread).Select(place => Within(state, place));
        return mixture.Fits.Take(3).SelectMany(fit => FlankPlan.Places.SelectMany(place => new[]
        {
            Within(state, Math.Exp(fit.LogPeak) * (1 + (place * fit.RelativeHalfWidth))),
            Within(state, Math.Exp(fit.LogPeak) * (1 - (place * fit.RelativeHalfWidth))),
        }));
    }

    private static Func<DialSetting, double, double> Gain(SearchState state, DecadeBox box)
    {
        if (state.Mixture is not { } mixture)
        {
            var points = GridPlan.Draw(state.Grid);
            return (_, picofarads) => GridPlan.Gain(state.Grid, points, picofarads, state.Noise);
        }

        var (peak, minutes, noise) = (box.Nearest(Math.Exp(mixture.LogPeak)), state.NextMinutes, state.Noise);
        return (setting, picofarads) => mixture.Gain(
            picofarads, minutes, DialError.Widened(noise, mixture, picofarads, minutes, box.DifferenceSd(setting, peak)));
    }

    private static double Within(SearchState state, double picofarads) =>
        Math.Clamp(picofarads, state.Options.Smallest.Picofarads, state.Options.Largest.Picofarads);
}
