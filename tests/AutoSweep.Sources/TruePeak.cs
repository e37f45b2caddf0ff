using AutoSweep.Sources.Networks;

namespace AutoSweep.Sources;

/// <summary>A network's peak, found from its complex output alone by dense search: independent of every response law.</summary>
/// <param name="Picofarads">Where |V| is largest.</param>
/// <param name="Volts">|V| there, for an emf of 1 V.</param>
/// <param name="HalfWidthPicofarads">Half the distance between the half-power points.</param>
public sealed record TruePeak(double Picofarads, double Volts, double HalfWidthPicofarads)
{
    private const double LowestPicofarads = 500;
    private const double HighestPicofarads = 3e6;
    private const int Steps = 1500;

    /// <summary>Capacitance over half-width.</summary>
    public double Q => Picofarads / HalfWidthPicofarads;

    /// <summary>Finds a network's peak; none where the half-power points are not both in 0.5 nF to 3 µF.</summary>
    public static TruePeak? Of(INetwork network)
    {
        var ratio = Math.Pow(HighestPicofarads / LowestPicofarads, 1.0 / Steps);
        var best = Enumerable.Range(0, Steps + 1).Select(i => LowestPicofarads * Math.Pow(ratio, i)).MaxBy(c => Level(network, c));
        var peak = Sharpen(network, best / ratio, best * ratio);
        var half = Level(network, peak) / Math.Sqrt(2);
        if (Level(network, LowestPicofarads) > half || Level(network, HighestPicofarads) > half)
            return null;
        var lower = Crossing(network, half, LowestPicofarads, peak);
        var upper = Crossing(network, half, HighestPicofarads, peak);
        return new(peak, Level(network, peak), (upper - lower) / 2);
    }

    internal static double Level(INetwork network, double picofarads) => network.Output(picofarads * 1e-12).Magnitude;

    // Ternary search on 1/|V|^2; 90 steps shrink the bracket below a millionth of a picofarad, rounding ends it near 1e-8 relative.
    private static double Sharpen(INetwork network, double low, double high)
    {
        for (var i = 0; i < 90; i++)
        {
            var third = (high - low) / 3;
            if (Level(network, low + third) < Level(network, high - third))
                low += third;
            else
                high -= third;
        }
        return (low + high) / 2;
    }

    private static double Crossing(INetwork network, double half, double outside, double inside)
    {
        for (var i = 0; i < 60; i++)
        {
            var middle = (outside + inside) / 2;
            if (Level(network, middle) < half)
                outside = middle;
            else
                inside = middle;
        }
        return (outside + inside) / 2;
    }
}
