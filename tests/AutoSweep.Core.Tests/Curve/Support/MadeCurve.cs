using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Tests.Curve.Support;

/// <summary>Level curves made up in decibels, with a seed for their scatter.</summary>
internal static class MadeCurve
{
    public static GeneratorProfile Generator { get; } = GeneratorProfileLibrary.Open("classic-91-60hz");

    public static TargetCurve NoTarget { get; } = new("none", "none", []);

    /// <summary>A curve whose levels follow a shape with normal scatter.</summary>
    /// <param name="decibels">Decibels over 1 mV by output.</param>
    public static LevelCurve Of(Func<int, double> decibels, double scatter = 0, int seed = 1, double relativeUncertainty = 0.005) =>
        Of(decibels, scatter, new Random(seed), relativeUncertainty);

    // One source for many curves: equal places in the sequences of neighbouring seeds are not independent.
    public static LevelCurve Of(Func<int, double> decibels, double scatter, Random random, double relativeUncertainty = 0.005) =>
        new(CurveStand.AsFound, [.. Generator.Outputs.Select(output => new LevelPoint(
            output.Number, Math.Pow(10, (decibels(output.Number) + (scatter * Normal(random))) / 20), relativeUncertainty))]);

    /// <summary>The decibels of the profile's own target.</summary>
    public static double Target(int output) => 20 * Math.Log10(Generator.Outputs[output - 1].ExpectedMillivolts!.Value);

    public static LevelOutliers Judge(LevelCurve curve, TargetCurve? target = null) => LevelOutliers.Of(Generator, CurveComparison.Of(curve, target ?? NoTarget));

    // Box and Muller (1958).
    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
