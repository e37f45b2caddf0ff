using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Sources.Networks;

namespace AutoSweep.Sources;

/// <summary>A tuned output with everything that disturbs a reading of it; its truth is known.</summary>
/// <param name="Family">How the network is arranged.</param>
/// <param name="Network">The network.</param>
/// <param name="Peak">The truth.</param>
/// <param name="ExpectedPicofarads">What the profile would say: wrong by up to 40 %.</param>
/// <param name="RelativeNoise">One standard deviation of a reading (a mean of samples) over the reading.</param>
/// <param name="HumShare">Hum over the level at the peak.</param>
/// <param name="DriftPerMinute">Relative change of the tone a minute.</param>
/// <param name="SecondsPerReading">What a reading takes.</param>
/// <param name="Seed">Of the noise.</param>
public sealed record RandomSource(
    SourceFamily Family,
    INetwork Network,
    TruePeak Peak,
    double ExpectedPicofarads,
    double RelativeNoise,
    double HumShare,
    double DriftPerMinute,
    double SecondsPerReading,
    int Seed)
{
    /// <summary>From how many samples the bench estimates the noise that it tells; 0 tells the true one.</summary>
    public int NoiseSamples { get; init; }

    /// <summary>The relay box's smallest and largest total (16 relays, four decades; stray of 100 pF).</summary>
    public static PeakSearchOptions Options { get; } = new() { Smallest = new(100), Largest = new(1_000_000) };

    /// <summary>What the search is told beforehand.</summary>
    public PeakPrior Prior => new() { Expected = Capacitance.FromPicofarads(ExpectedPicofarads) };

    /// <summary>The decibels lost at a capacitance.</summary>
    public double LossDecibels(double picofarads) => 20 * Math.Log10(Peak.Volts / TruePeak.Level(Network, picofarads));

    /// <summary>Begins a bench session with this source: same seed, same noise.</summary>
    public SourceBench Bench() => new(this);
}
