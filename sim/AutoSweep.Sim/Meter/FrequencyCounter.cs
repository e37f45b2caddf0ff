using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Meter;

/// <summary>The meter's reciprocal counter, with the weaknesses of the real ones.</summary>
/// <remarks>
/// Bench counters are specified from about 10 % of the lowest range (meters' guides, from memory). Below that they see some of the zero
/// crossings, or none, or those of the hum; with hum or crosstalk of nearly the tone's size they count extra crossings. How often is
/// a plausible guess without a source: what matters is that a single count cannot be trusted.
/// </remarks>
internal sealed class FrequencyCounter(MeterDefinition meter)
{
    /// <summary>Counting noise of a well-fed reciprocal counter in one second, relative (from memory: 6.5 digits a second).</summary>
    private const double ResolutionInOneSecond = 1e-6;

    /// <summary>Below this part of the threshold the trigger never fires.</summary>
    private const double NothingSeen = 0.3;

    /// <summary>From this part of the tone on, other tones add or swallow crossings.</summary>
    private const double Disturbing = 0.35;

    /// <summary>A count in hertz, 0 where nothing was seen.</summary>
    public double Count(BenchView view, double apertureSeconds, double rangeVolts)
    {
        var signal = view.Signal;
        var threshold = meter.CounterThresholdMillivolts * 1e-3 * Math.Max(1, rangeVolts / 0.1);
        if (signal.Volts < NothingSeen * threshold) return 0;
        if (signal.ToneVolts < signal.UnwantedVolts) return OfUnwanted(view, threshold);
        var counted = Noisy(view, signal.ToneHertz, apertureSeconds) * SeenPart(view, apertureSeconds);
        var random = view.Random;
        if (signal.ToneVolts < threshold && random.NextDouble() > Likely(signal.ToneVolts / threshold))
            return Miscount(random, counted, signal.HumHertz);
        var disturbance = signal.UnwantedVolts / signal.ToneVolts;
        return disturbance > Disturbing && random.NextDouble() < disturbance
            ? counted + (signal.HumHertz * random.NextDouble())
            : counted;
    }

    private static double Likely(double partOfThreshold) => (partOfThreshold - NothingSeen) / (1 - NothingSeen);

    private static double OfUnwanted(BenchView view, double threshold) =>
        view.Signal.HumVolts < threshold ? 0 : view.Signal.HumHertz * view.Random.Next(1, 4);

    private static double Miscount(Random random, double counted, double humHertz) => random.Next(3) switch
    {
        0 => 0,
        1 => counted * (0.3 + (0.65 * random.NextDouble())),
        _ => humHertz * random.Next(1, 6),
    };

    private static double Noisy(BenchView view, double hertz, double apertureSeconds) =>
        hertz * (1 + (ResolutionInOneSecond / apertureSeconds * ((2 * view.Random.NextDouble()) - 1)));

    // A contact that changes within the gate loses the crossings of the time before.
    private static double SeenPart(BenchView view, double apertureSeconds) =>
        Math.Min(1, Math.Max(0.05, view.SinceDisturbed.TotalSeconds / apertureSeconds));
}
