namespace AutoSweep.Core.Peaks;

/// <summary>Notices that the peak is beyond what can be set, or so near an end that one flank cannot be read.</summary>
internal static class EdgeRule
{
    // In half-widths: a flank nearer than this to the peak tells nothing of where it is.
    private const double FlankNeeded = 0.5;

    internal static SearchMove? Consider(SearchState state)
    {
        if (state.Mixture is not { } mixture || state.Log.Used.Length < 4)
            return null;
        var peak = Math.Exp(mixture.LogPeak);
        var width = peak * mixture.RelativeHalfWidth;
        if (peak + FlankNeeded * width > state.Options.Largest.Picofarads)
            return AtEnd(state, mixture, state.Options.Largest.Picofarads);
        if (peak - FlankNeeded * width < state.Options.Smallest.Picofarads)
            return AtEnd(state, mixture, state.Options.Smallest.Picofarads);
        return null;
    }

    private static SearchMove? AtEnd(SearchState state, LawMixture mixture, double end)
    {
        if (!state.Log.Trace.Any(point => point.Used && IsAt(end, point.Reading)))
            return SearchMove.Read(end);
        return SearchMove.Stop(IsSurelyInside(state, mixture) || !IsAt(end, state.Log.Loudest!) ? PeakStopReason.PeakAtEdge : PeakStopReason.NoPeakInRange);
    }

    private static bool IsAt(double end, PeakReading reading) => Math.Abs(reading.Capacitance.Picofarads - end) <= 0.01 * end;

    private static bool IsSurelyInside(SearchState state, LawMixture mixture)
    {
        var margin = 2 * Math.Sqrt(mixture.LogPeakVariance);
        return mixture.LogPeak + margin < Math.Log(state.Options.Largest.Picofarads)
            && mixture.LogPeak - margin > Math.Log(state.Options.Smallest.Picofarads);
    }
}
