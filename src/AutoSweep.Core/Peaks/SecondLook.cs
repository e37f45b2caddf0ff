namespace AutoSweep.Core.Peaks;

/// <summary>Reads a suspected place once more: the suspect is borne out, or set aside.</summary>
internal static class SecondLook
{
    // In parts of the capacitance: nearer readings are of one place.
    private const double SamePlace = 0.002;

    /// <summary>The reading to take; none when the place has been read again and the matter is settled.</summary>
    internal static SearchMove? At(SearchState state, int suspect)
    {
        var reading = state.Log.Trace[suspect].Reading;
        foreach (var position in state.Log.Used)
        {
            if (position == suspect || !IsSamePlace(state.Log.Trace[position].Reading, reading))
                continue;
            Judge(state, suspect, position);
            return null;
        }
        return SearchMove.Read(reading.Capacitance);
    }

    private static bool IsSamePlace(PeakReading a, PeakReading b) =>
        Math.Abs(a.Capacitance.Picofarads - b.Capacitance.Picofarads) <= SamePlace * b.Capacitance.Picofarads;

    private static void Judge(SearchState state, int suspect, int other)
    {
        var apart = Math.Log(state.Log.Trace[other].Reading.Level.Volts / state.Log.Trace[suspect].Reading.Level.Volts);
        state.Log.Confirm(other);
        // Four standard deviations of a difference of two readings.
        if (Math.Abs(apart) < 4 * Math.Sqrt(2) * state.Noise)
            state.Log.Confirm(suspect);
        else
            state.SetAside(suspect);
    }
}
