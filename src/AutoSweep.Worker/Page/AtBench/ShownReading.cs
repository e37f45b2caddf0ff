namespace AutoSweep.Worker.Page.AtBench;

/// <summary>One reading as a screen shows it.</summary>
/// <param name="Sequence">Its place in the journal.</param>
/// <param name="At">When its line was written.</param>
/// <param name="Picofarads">The capacitance in circuit; none where none is set.</param>
/// <param name="Millivolts">The level in millivolts rms.</param>
/// <param name="Settled">False when the samples still moved after every wait.</param>
public sealed record ShownReading(long Sequence, DateTimeOffset At, long? Picofarads, double Millivolts, bool Settled)
{
    /// <summary>When its line was written, in milliseconds of Unix time, so that a browser can tell how long it took to be seen.</summary>
    public long UnixMilliseconds => At.ToUnixTimeMilliseconds();
}
