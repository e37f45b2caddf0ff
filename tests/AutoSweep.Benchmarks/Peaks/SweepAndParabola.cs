namespace AutoSweep.Benchmarks.Peaks;

/// <summary>Evenly spaced readings (in ratio), then the vertex of the parabola through the loudest and its two neighbours.</summary>
internal static class SweepAndParabola
{
    internal static double Find(Func<double, double> level, double low, double high, int readings)
    {
        var places = Enumerable.Range(0, readings).Select(i => low * Math.Pow(high / low, i / (readings - 1.0))).ToArray();
        var levels = places.Select(level).ToArray();
        var top = Math.Clamp(Array.IndexOf(levels, levels.Max()), 1, readings - 2);
        return Vertex(places.AsSpan(top - 1, 3), levels.AsSpan(top - 1, 3));
    }

    private static double Vertex(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var (left, right) = ((x[1] - x[0]) * (y[1] - y[2]), (x[1] - x[2]) * (y[1] - y[0]));
        var vertex = x[1] - 0.5 * ((x[1] - x[0]) * left - (x[1] - x[2]) * right) / (left - right);
        return double.IsFinite(vertex) ? Math.Clamp(vertex, x[0], x[2]) : x[1];
    }
}
