using AutoSweep.Core.Quantities;
using AutoSweep.Sources;

namespace AutoSweep.Benchmarks.Peaks;

/// <summary>A way to find a peak that knows no response law, for comparison.</summary>
/// <param name="Name">For the table.</param>
/// <param name="Find">Finds the peak, in picofarads, from levels read within a range that is sure to hold it.</param>
internal sealed record RivalMethod(string Name, Func<Func<double, double>, double, double, double> Find)
{
    /// <summary>The usual methods, each with as many readings as it says.</summary>
    internal static IReadOnlyList<RivalMethod> All { get; } =
    [
        new("golden section, 8 readings", (level, low, high) => GoldenSection.Find(level, low, high, 8)),
        new("golden section, 12 readings", (level, low, high) => GoldenSection.Find(level, low, high, 12)),
        new("bounded Brent, 12 readings", (level, low, high) => BoundedBrent.Find(level, low, high, 12)),
        new("12-point sweep and parabola", (level, low, high) => SweepAndParabola.Find(level, low, high, 12)),
    ];

    /// <summary>The decibels lost at this method's answer for a source.</summary>
    internal (double LossDecibels, int Readings) Score(RandomSource source)
    {
        var bench = source.Bench();
        // Expected values are off by up to 40 %: the truth is within expected/1.4 and expected/0.6; a little more lets it be inside.
        var peak = Find(Level, source.ExpectedPicofarads / 1.45, source.ExpectedPicofarads / 0.58);
        return (source.LossDecibels(peak), bench.Readings);

        double Level(double picofarads) => bench.Read(Capacitance.FromPicofarads(picofarads)).Level.Volts;
    }
}
