using AutoSweep.Core.Decades;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Sources;

/// <summary>A source on a bench without ports: a person dials, reads three digits and types them; each takes about a minute.</summary>
public sealed class HandBench(RandomSource source, HandBox box, DecadeBox described)
{
    private const double PeakVolts = 5e-3;

    // An eye on a last digit that flickers (common practice, no source); what is told beside the digits' own.
    private const double ToldFlicker = 0.005;

    private readonly Random _random = new(source.Seed);
    private double _seconds;

    /// <summary>How often the dials were turned.</summary>
    public int Dialings { get; private set; }

    /// <summary>How many single dials were turned.</summary>
    public int Turns { get; private set; }

    /// <summary>Where the dials stand.</summary>
    public DialSetting? Now { get; private set; }

    /// <summary>Dials and reads.</summary>
    public PeakReading Read(Capacitance wanted)
    {
        var setting = described.Nearest(wanted.Picofarads, Now);
        if (!setting.Equals(Now))
        {
            Dialings++;
            Turns += setting.TurnsFrom(Now);
        }

        Now = setting;
        // Half a minute to a minute and a half.
        _seconds += 30 + (60 * _random.NextDouble());
        var tone = TruePeak.Level(source.Network, box.Picofarads(setting)) / source.Peak.Volts * (1 + (source.DriftPerMinute * _seconds / 60));
        var level = Math.Sqrt((tone * tone) + (source.HumShare * source.HumShare)) * (1 + (source.RelativeNoise * Gaussian(_random)));
        var (shown, step) = ThreeDigits(Math.Max(level, 1e-6) * PeakVolts);
        var digits = step / Math.Sqrt(12) / shown;
        return new(described.Total(setting), new(shown), Math.Sqrt((digits * digits) + (ToldFlicker * ToldFlicker)), TimeSpan.FromSeconds(_seconds));
    }

    /// <summary>The box as it stands, on a capacitance meter of four digits that wanders by a twentieth of a per cent; its gain is the parts' too.</summary>
    public (Capacitance Shown, double Sd) Measure()
    {
        var seen = box.Picofarads(Now!) * (1 + (0.0005 * Gaussian(_random)));
        var step = Math.Pow(10, Math.Floor(Math.Log10(seen)) - 3);
        return (Capacitance.FromPicofarads(Math.Round(seen / step) * step), Math.Sqrt(Math.Pow(step / Math.Sqrt(12), 2) + Math.Pow(0.001 * seen / Math.Sqrt(3), 2)));
    }

    // Box and Muller's transform.
    internal static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static (double Shown, double Step) ThreeDigits(double volts)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(volts)) - 2);
        return (Math.Round(volts / step) * step, step);
    }
}
