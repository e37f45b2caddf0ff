using System.Globalization;
using AutoSweep.Worker.Bench;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>What the meter's input shows while the clips hang free, against what the bench must be able to tell apart.</summary>
public static class OpenInput
{
    /// <summary>The wire's name.</summary>
    public const string Wire = "Noise of the open input";

    // Mains hum and its first harmonics (50 and 60 Hz systems); a count this near to one of them is hum.
    private const double NearHertz = 1.5;

    private static readonly double[] Hums = [50, 60, 100, 120, 150, 180];

    /// <summary>Judges.</summary>
    /// <param name="millivolts">Readings of the open input at the terminal, the amplifier's gain taken out.</param>
    /// <param name="hertz">What the meter counts there; none where it counts nothing, or never the same twice.</param>
    /// <param name="dead">Below this a silent output can be told from a weak one, in millivolts.</param>
    /// <param name="present">Above this a level is taken for a tone, in millivolts.</param>
    public static WireResult Judge(IReadOnlyCollection<double> millivolts, double? hertz, double dead, double present)
    {
        var level = millivolts.Mean();
        var found = $"{Text(level)} mV of {Kind(hertz)} over {millivolts.Count} readings";
        var expected = $"less than {Text(dead)} mV with the clips hanging free";
        if (level < dead)
            return new(Wire, WireVerdict.Good, "quiet: " + found, expected);
        return level < present
            ? new(Wire, WireVerdict.Look, found, expected, "You can work. A dead output may be called humming: " + Cure)
            : new(Wire, WireVerdict.NotGood, found, expected,
                $"Take the clips off the generator and stop its motor. If it stays above {Text(present)} mV, {Cure}");
    }

    /// <summary>Judges by the limits that the stages use.</summary>
    public static WireResult Judge(IReadOnlyCollection<double> millivolts, double? hertz) =>
        Judge(millivolts, hertz, new SurveyOptions().DeadMillivolts, 1e3 * new ClipWatchOptions().Present.Volts);

    private const string Cure = "use a screened lead, lay it away from mains leads and the motor, and earth the screen at the meter only.";

    private static string Kind(double? hertz) => hertz is { } tone && Hums.Any(hum => Math.Abs(tone - hum) < NearHertz)
        ? string.Create(CultureInfo.InvariantCulture, $"mains hum at {tone:0} Hz")
        : hertz is { } other ? string.Create(CultureInfo.InvariantCulture, $"a tone of {other:0} Hz") : "noise";

    private static string Text(double millivolts) => millivolts.ToString("0.###", CultureInfo.InvariantCulture);
}
