using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Sources;

/// <summary>Reads a source's level as a bench would: nearest relay combination, hum in quadrature, drift, noise, passing time.</summary>
public sealed class SourceBench(RandomSource source)
{
    // The peak of every source is scaled to a few millivolts, as terminals give (trade figures: 3 to 15 mV).
    private const double PeakVolts = 5e-3;

    private readonly Random _random = new(source.Seed);
    private int _readings;

    /// <summary>How many readings were taken.</summary>
    public int Readings => _readings;

    /// <summary>Sets a capacitance as near as the relays can, and reads.</summary>
    public PeakReading Read(Capacitance wanted)
    {
        var seconds = source.SecondsPerReading * ++_readings;
        var set = NearestCombination(wanted.Picofarads);
        var tone = TruePeak.Level(source.Network, set) / source.Peak.Volts * (1 + source.DriftPerMinute * seconds / 60);
        var level = Math.Sqrt(tone * tone + source.HumShare * source.HumShare) * (1 + source.RelativeNoise * Gaussian());
        return new(new(set), new(Math.Max(level, 1e-6) * PeakVolts), ToldNoise(), TimeSpan.FromSeconds(seconds));
    }

    // The scatter of n samples about their own mean, with n − 1 degrees of freedom, is all that a real bench knows of its noise.
    private double ToldNoise()
    {
        if (source.NoiseSamples == 0)
            return source.RelativeNoise;
        var sum = 0.0;
        for (var i = 1; i < source.NoiseSamples; i++)
            sum += Math.Pow(Gaussian(), 2);
        return Math.Max(source.RelativeNoise * Math.Sqrt(sum / (source.NoiseSamples - 1)), 1e-6);
    }

    // Steps of 100 pF whose calibrated values are off by up to 60 pF, known to the reader.
    private long NearestCombination(long picofarads) => Math.Clamp((picofarads + 50) / 100 * 100 + _random.Next(-60, 61), 100, 1_000_000);

    // Box and Muller's transform.
    private double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
