using System.Numerics;

namespace AutoSweep.Sim.Network;

/// <summary>An output's voltage over the one capacitance that is varied: V = (a + bC)/(1 + gC), exact for any linear network.</summary>
/// <remarks>
/// Three solutions of the network fix a, b and g. The square of the level is then a ratio of two quadratics in C, so the peak and its
/// half-power points are roots of quadratics: nothing is searched for. The job's own peak search takes another way (it fits
/// readings), so the two can check each other.
/// </remarks>
internal sealed class BilinearResponse
{
    private readonly Complex a;
    private readonly Complex b;
    private readonly Complex g;

    /// <param name="voltage">The network's voltage at a capacitance in farads.</param>
    /// <param name="scale">A capacitance in farads of the order of the peak's.</param>
    public BilinearResponse(Func<double, Complex> voltage, double scale)
    {
        var (low, high) = (voltage(scale), voltage(2 * scale));
        a = voltage(0);
        var (slopeLow, slopeHigh) = ((low - a) / scale, (high - a) / (2 * scale));
        g = high == low ? 0 : (slopeLow - slopeHigh) / (high - low);
        b = slopeLow + (g * low);
    }

    public double Level(double farads) => ((a + (b * farads)) / (1 + (g * farads))).Magnitude;

    /// <summary>The loudest place above zero, with its half-power points; none where the level has no such maximum.</summary>
    public ResponsePeak? Peak()
    {
        // N = n0 + n1 C + n2 C^2 over D = 1 + d1 C + d2 C^2; the extrema are the roots of N'D - ND', whose cubic terms cancel.
        var (n0, n1, n2) = Square(a, b);
        var (_, d1, d2) = Square(1, g);
        var candidates = Quadratic(n1 - (n0 * d1), 2 * (n2 - (n0 * d2)), (n2 * d1) - (n1 * d2)).Where(root => root > 0).ToList();
        if (candidates.Count == 0) return null;
        var peak = candidates.MaxBy(Level);
        var half = Level(peak) * Level(peak) / 2;
        if (Level(peak) <= Level(peak * 1.001) || Level(peak) <= Level(peak * 0.999)) return null;
        var points = Quadratic(n0 - half, n1 - (half * d1), n2 - (half * d2)).Where(root => root > 0).ToList();
        return new(peak, Level(peak), LastBelow(points, peak), FirstAbove(points, peak));
    }

    private static double? LastBelow(List<double> points, double peak) => points.Where(p => p < peak).Select(p => (double?)p).Max();

    private static double? FirstAbove(List<double> points, double peak) => points.Where(p => p > peak).Select(p => (double?)p).Min();

    private static (double Constant, double Linear, double Quadratic) Square(Complex constant, Complex slope) => (
        (constant * Complex.Conjugate(constant)).Real,
        2 * (Complex.Conjugate(constant) * slope).Real,
        (slope * Complex.Conjugate(slope)).Real);

    private static IEnumerable<double> Quadratic(double c0, double c1, double c2)
    {
        var discriminant = (c1 * c1) - (4 * c2 * c0);
        if (discriminant < 0) return [];

        // The form without cancellation: one root by the sum of like signs, the other from the product of the roots.
        var q = -0.5 * (c1 + (Math.CopySign(1, c1) * Math.Sqrt(discriminant)));
        return new[] { c0 / q, q / c2 }.Where(double.IsFinite);
    }
}
