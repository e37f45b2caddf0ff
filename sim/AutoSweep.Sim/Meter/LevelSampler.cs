using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.Meter;

/// <summary>What the meter makes of its detector: gain error, noise, weakness at the foot of a range, steps and overload.</summary>
internal sealed class LevelSampler(MeterDefinition meter)
{
    /// <summary>What SCPI-1999 says for a level over the range.</summary>
    public const double Overload = 9.9e37;

    /// <summary>AC ranges of bench meters read to 120 % of their end (meters' data sheets, from memory).</summary>
    private const double OverRange = 1.2;

    /// <summary>AC accuracy is specified from this part of a range up.</summary>
    private const double SpecifiedFrom = 0.05;

    /// <summary>One sample in volts rms.</summary>
    public double Sample(BenchView view, double rangeVolts, double apertureSeconds, double filterHertz)
    {
        var volts = (view.DetectorVolts * Swings(view, apertureSeconds) * (1 - BelowFilter(view.Signal.ToneHertz, filterHertz))
                * (1 + (meter.GainErrorPercent / 100)))
            + LowLevelError(view.DetectorVolts, rangeVolts) + Noise(view, rangeVolts);
        if (volts > OverRange * rangeVolts) return Overload;
        var step = rangeVolts / meter.CountsPerRange;
        return Math.Max(0, Math.Round(volts / step) * step);
    }

    private static double Swings(BenchView view, double apertureSeconds)
    {
        var (signal, time) = (view.Signal, view.Time.TotalSeconds);
        var share = signal.Volts == 0 ? 0 : signal.ToneVolts * signal.ToneVolts / (signal.Volts * signal.Volts);
        return 1 + (share * (signal.Wheel.Seen(time, view.TimeConstantSeconds, apertureSeconds)
            + signal.Fault.Seen(time, view.TimeConstantSeconds, apertureSeconds)));
    }

    // 0.74 % low at 15 Hz and 0.22 % at 30 Hz with the 20 Hz filter (meters' data, from memory).
    private static double BelowFilter(double toneHertz, double filterHertz) =>
        toneHertz <= 0 ? 0 : Math.Min(0.3, 0.0074 * Math.Pow(0.75 * filterHertz / toneHertz, 1.75));

    private double LowLevelError(double volts, double rangeVolts) =>
        meter.LowLevelErrorPercentOfRange / 100 * rangeVolts * Math.Max(0, 1 - (volts / (SpecifiedFrom * rangeVolts)));

    private double Noise(BenchView view, double rangeVolts) =>
        (Normal.Sample(view.Random, 0, 1) * meter.NoisePercentOfReading / 100 * view.DetectorVolts)
        + (Normal.Sample(view.Random, 0, 1) * meter.NoisePercentOfRange / 100 * rangeVolts);
}
