using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>How far the mains is from the frequency for which the gearing was cut, learnt from the tones that were recognised.</summary>
/// <remarks>
/// The motor is synchronous, so all tones are off by one common ratio. The estimate is the median of the last few counts: one miscount
/// in three does not move it, and it follows a mains that drifts. Immutable: <see cref="With"/> returns the next estimate.
/// </remarks>
public sealed class MainsEstimate
{
    /// <summary>How far a tone may be off while nothing is known of the mains: 20 cents.</summary>
    /// <remarks>
    /// EN 50160 keeps an interconnected supply within ±1 % (17.4 cents) for 99.5 % of a year [clause from memory]; the rest
    /// is for the counter.
    /// </remarks>
    public const double UnknownMainsCents = 20;

    /// <summary>How far a tone may be off an estimate that rests on counts: 9 cents, about 0.5 %.</summary>
    /// <remarks>0.1 Hz of wander between two clips is 3.5 cents at 50 Hz; the rest is for a counter on a few millivolts.</remarks>
    public const double KnownMainsCents = 9;

    private const int CountsKept = 9;
    private const int CountsToKnow = 3;

    private readonly double[] _ratios;

    private MainsEstimate(double[] ratios) => _ratios = ratios;

    /// <summary>Nothing known: the ratio is 1, within <see cref="UnknownMainsCents"/>.</summary>
    public static MainsEstimate Unknown { get; } = new([]);

    /// <summary>How many counts the estimate rests on, at most 9.</summary>
    public int Counts => _ratios.Length;

    /// <summary>Mains frequency over the frequency for which the gearing was cut.</summary>
    /// <value>1 when nothing is known; until three counts are there, 1 takes part as one of them.</value>
    public double Ratio => Median(Counts < CountsToKnow ? [1, .. _ratios] : _ratios);

    /// <summary>How many cents a count may lie off a tone at <see cref="Ratio"/> and still be trusted.</summary>
    public double ToleranceCents => Counts < CountsToKnow ? UnknownMainsCents : KnownMainsCents;

    /// <summary>An estimate from a mains frequency that was measured, or that a frequency converter is set to.</summary>
    /// <param name="profile">The generator's profile.</param>
    /// <param name="mains">The mains frequency, above 0.</param>
    public static MainsEstimate Measured(GeneratorProfile profile, Frequency mains) => Known(mains.Hertz / profile.MainsHertz);

    /// <summary>An estimate from one output of which a person says which it is: the way out when the mains is off by a semitone.</summary>
    /// <param name="profile">The generator's profile.</param>
    /// <param name="output">The output that is clipped.</param>
    /// <param name="counted">What the counter says, above 0.</param>
    public static MainsEstimate Told(GeneratorProfile profile, GeneratorOutput output, Frequency counted) =>
        Known(counted.Hertz / profile.ToneOf(output).Hertz);

    /// <summary>The estimate after one more count.</summary>
    /// <param name="match">What the count turned out to be; only one near a tone and away from hum says something of the mains.</param>
    public MainsEstimate With(ToneMatch match) => match.IsNearTone && match.HumMultiple == 0
        ? new([.. _ratios.TakeLast(CountsKept - 1), match.MainsRatio])
        : this;

    private static MainsEstimate Known(double ratio) => new([.. Enumerable.Repeat(ratio, CountsToKnow)]);

    private static double Median(double[] values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
