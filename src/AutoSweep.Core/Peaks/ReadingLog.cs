namespace AutoSweep.Core.Peaks;

/// <summary>The readings that a search was told, which of them still count, and what the fits see of them.</summary>
internal sealed class ReadingLog
{
    private readonly List<PeakTracePoint> _trace = [];
    private readonly HashSet<int> _confirmed = [];

    internal IReadOnlyList<PeakTracePoint> Trace => _trace;

    internal int Told => _trace.Count;

    internal PeakReading Last => _trace[^1].Reading;

    /// <summary>Positions in the trace of the readings that count.</summary>
    internal int[] Used => [.. Enumerable.Range(0, _trace.Count).Where(i => _trace[i].Used)];

    /// <summary>The loudest reading that counts; none if none does.</summary>
    internal PeakReading? Loudest => _trace.Where(point => point.Used).Select(point => point.Reading).MaxBy(reading => reading.Level.Volts);

    internal void Add(PeakReading reading) => _trace.Add(new(reading, reading.Settled && reading.Level.Volts > 0));

    internal void SetAside(int position) => _trace[position] = _trace[position] with { Used = false };

    /// <summary>A reading that a second one bore out is never suspected again.</summary>
    internal void Confirm(int position) => _confirmed.Add(position);

    internal bool IsConfirmed(int position) => _confirmed.Contains(position);

    /// <summary>Every reading that counts, as the fits see it.</summary>
    internal FitPoint[] Points(int without = -1)
    {
        var floor = Math.Max(TypicalNoise(), SlowEffects.LeastRelativeNoise);
        return [.. Used.Where(i => i != without).Select(i => Point(_trace[i].Reading, floor))];
    }

    internal FitPoint LastPoint => Point(Last, SlowEffects.LeastRelativeNoise);

    // A noise told from three samples may be ten times too small: no reading is trusted beyond the typical one.
    private static FitPoint Point(PeakReading reading, double floor) => new(
        reading.Capacitance.Picofarads, Math.Log(reading.Level.Volts), Math.Max(reading.RelativeNoise, floor), reading.At.TotalMinutes);

    /// <summary>The root mean square of the told noises, those far above the median left out: a reading low on a flank is truly noisier.</summary>
    internal double TypicalNoise()
    {
        double[] told = [.. _trace.Where(point => point.Used).Select(point => point.Reading.RelativeNoise).Order()];
        if (told.Length == 0)
            return SlowEffects.LeastRelativeNoise;
        var median = told[told.Length / 2];
        return Math.Sqrt(told.Where(noise => noise <= 3 * median).Average(noise => noise * noise));
    }
}
