namespace AutoSweep.Core.Peaks;

/// <summary>Notices that the tone went away: a clip fell off, the motor stopped.</summary>
internal static class LevelRule
{
    // A tuned output of Q 25 at three times its capacitance still gives 2.5 % of its peak; with hum more.
    private const double FarTooLow = 0.02;

    // And where a fit says what to expect, a fifth of that.
    private const double UnlikeTheFit = 0.2;

    internal static SearchMove? Consider(SearchState state)
    {
        var loudest = LoudestBeforeLast(state.Log);
        if (loudest is null)
            return SilentFromTheStart(state);
        if (!IsLow(state, loudest))
            return null;
        if (IsSamePlace(state.Log.Last, loudest))
            return SearchMove.Stop(PeakStopReason.LevelLost);
        if (state.Log.Trace[^1].Used)
            state.SetAside(state.Log.Told - 1);
        return SearchMove.Read(loudest.Capacitance);
    }

    private static PeakReading? LoudestBeforeLast(ReadingLog log) =>
        log.Trace.SkipLast(1).Where(point => point.Used).Select(point => point.Reading).MaxBy(reading => reading.Level.Volts);

    private static SearchMove? SilentFromTheStart(SearchState state)
    {
        if (state.Log.Last.Level.Volts > 0)
            return null;
        // A second look, in case the first fell on a relay's bounce.
        return state.Log.Told >= 2 ? SearchMove.Stop(PeakStopReason.LevelLost) : SearchMove.Read(state.Log.Last.Capacitance);
    }

    private static bool IsLow(SearchState state, PeakReading loudest)
    {
        var last = state.Log.Last;
        if (IsSamePlace(last, loudest))
            return last.Level.Volts < 0.5 * loudest.Level.Volts;
        return last.Level.Volts < FarTooLow * loudest.Level.Volts || IsUnlikeTheFit(state, last, loudest);
    }

    private static bool IsUnlikeTheFit(SearchState state, PeakReading last, PeakReading loudest)
    {
        if (last.Level.Volts > 0.1 * loudest.Level.Volts || state.MixtureWithout(state.Log.Told - 1) is not { } mixture)
            return false;
        var (expected, variance, _) = mixture.Best.Predict(last.Capacitance.Picofarads, last.At.TotalMinutes);
        return variance < 0.04 && Math.Log(last.Level.Volts) < expected + Math.Log(UnlikeTheFit);
    }

    private static bool IsSamePlace(PeakReading a, PeakReading b) =>
        Math.Abs(a.Capacitance.Picofarads - b.Capacitance.Picofarads) <= 0.01 * b.Capacitance.Picofarads;
}
