namespace AutoSweep.Instruments.Meters;

/// <summary>A bench meter that reads the level and counts the frequency of a tone.</summary>
/// <remarks>
/// Values are at the meter's input: a front-end amplifier's gain is taken out by whoever knows the bench's wiring. Calls are
/// one at a time. Instrument trouble throws <see cref="Core.BenchFaultException"/>; an odd answer is a <see cref="MeterReading"/>.
/// </remarks>
public interface ILevelMeter : IAsyncDisposable
{
    /// <summary>What the meter says it is.</summary>
    InstrumentIdentity Identity { get; }

    /// <summary>The largest level of the range in use, in volts rms.</summary>
    double RangeVolts { get; }

    /// <summary>How long the AC detector takes to settle after a change of level, from the driver file, for the bandwidth in use.</summary>
    TimeSpan Settling { get; }

    /// <summary>What an absolute level is uncertain by, noise left out: one standard deviation in volts, in the range in use.</summary>
    /// <param name="volts">The level at the meter's input in volts rms.</param>
    /// <returns>None where the maker's limits are not known, or do not hold for the tone that was prepared for.</returns>
    double? UncertaintyVolts(double volts);

    /// <summary>Chooses the fixed AC range that holds a level, and the detector bandwidth that passes a tone.</summary>
    /// <param name="largestVolts">The largest level to expect at the meter's input, in volts rms.</param>
    /// <param name="lowestHertz">The lowest tone to expect, in hertz.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken);

    /// <summary>One sample of the AC level in volts rms. Does not wait for settling: the caller knows what has changed and when.</summary>
    Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken);

    /// <summary>A series of level samples that the meter spaces evenly by itself, in the range in use.</summary>
    /// <returns>None where this meter cannot; an overload or an odd answer ends in none, too.</returns>
    Task<LevelBurst?> ReadBurstAsync(CancellationToken cancellationToken) => Task.FromResult<LevelBurst?>(null);

    /// <summary>One count of the frequency in hertz. Counters miscount or give 0 on a few millivolts: never trust a single count.</summary>
    Task<MeterReading> CountFrequencyAsync(CancellationToken cancellationToken);

    /// <summary>Shows a short text on the meter's display, if it can, so that a person whose eyes are at the magnets need not look at another screen; no effect
    /// otherwise.</summary>
    /// <param name="text">Twelve characters; more are cut off.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task ShowAsync(string text, CancellationToken cancellationToken);

    /// <summary>Lets the meter beep, if it can; no effect otherwise.</summary>
    Task BeepAsync(CancellationToken cancellationToken);
}
