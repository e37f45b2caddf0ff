namespace AutoSweep.Core.Peaks;

/// <summary>Notices that the level does not depend on the capacitance, after looking far enough to be sure.</summary>
internal static class FlatRule
{
    // Over a factor of four in capacitance even a Q of 1 changes the level by half.
    private const double FlatWithin = 0.05;
    private const double WideEnough = 4;

    // Twice and half the expected value, then four times and a quarter.
    private static readonly double[] Looks = [2.2, 1 / 2.2, 4.5, 1 / 4.5];

    internal static SearchMove? Consider(SearchState state)
    {
        var readings = state.Log.Trace.Where(point => point.Used).Select(point => point.Reading).ToArray();
        if (readings.Length < 3 || !IsFlat(readings, state.Noise))
            return null;
        foreach (var look in Looks)
        {
            var place = Math.Clamp(state.Prior.Expected.Picofarads * look, state.Options.Smallest.Picofarads, state.Options.Largest.Picofarads);
            if (!readings.Any(reading => Math.Abs(reading.Capacitance.Picofarads - place) < 0.1 * place))
                return SearchMove.Read(place);
        }
        return Span(readings) >= WideEnough ? SearchMove.Stop(PeakStopReason.ResponseFlat) : null;
    }

    private static bool IsFlat(PeakReading[] readings, double noise) =>
        readings.Max(reading => reading.Level.Volts) / readings.Min(reading => reading.Level.Volts) - 1 < Tolerance(readings, noise);

    // Near a peak three readings are as equal as noise lets them be; spread wide they must differ.
    private static double Tolerance(PeakReading[] readings, double noise) =>
        Span(readings) < 1.2 ? 0 : FlatWithin + 4 * noise;

    private static double Span(PeakReading[] readings) =>
        readings.Max(reading => reading.Capacitance.Picofarads) / (double)Math.Max(1, readings.Min(reading => reading.Capacitance.Picofarads));
}
