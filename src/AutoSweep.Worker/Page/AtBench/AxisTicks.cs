namespace AutoSweep.Worker.Page.AtBench;

/// <summary>Round places on an axis: steps of 1, 2 or 5 times a power of ten.</summary>
public static class AxisTicks
{
    /// <summary>The round values between two ends.</summary>
    /// <param name="from">The lower end.</param>
    /// <param name="to">The upper end; above the lower.</param>
    /// <param name="most">How many there may be, 2 or more.</param>
    public static IReadOnlyList<double> Between(double from, double to, int most)
    {
        var step = Step((to - from) / most);
        var first = (long)Math.Ceiling(from / step);
        var last = (long)Math.Floor(to / step);
        return [.. Enumerable.Range(0, (int)(last - first + 1)).Select(place => Math.Round((first + place) * step, 9))];
    }

    private static double Step(double least)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return new[] { 1.0, 2, 5, 10 }.Select(times => times * decade).First(step => step >= least * (1 - 1e-9));
    }
}
