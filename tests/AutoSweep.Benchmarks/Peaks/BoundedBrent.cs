namespace AutoSweep.Benchmarks.Peaks;

/// <summary>Brent's bounded search for a maximum: parabolas, with golden sections where they fail (Brent 1973, chapter 5).</summary>
internal static class BoundedBrent
{
    private static readonly double Smaller = (3 - Math.Sqrt(5)) / 2;

    // A thousandth of the place: far under any half-width, so the reading budget is what ends the search.
    private const double RelativeTolerance = 1e-3;

    internal static double Find(Func<double, double> level, double low, double high, int readings)
    {
        double best = low + Smaller * (high - low), second = best, third = best, step = 0, before = 0;
        double bestCost = -level(best), secondCost = bestCost, thirdCost = bestCost;
        for (var i = 1; i < readings; i++)
        {
            var (middle, tolerance) = ((low + high) / 2, RelativeTolerance * best);
            var parabola = Parabola(best, second, third, bestCost, secondCost, thirdCost);
            if (Math.Abs(before) > tolerance && Math.Abs(parabola) < Math.Abs(before / 2) && best + parabola > low && best + parabola < high)
                (before, step) = (step, parabola);
            else
                step = Smaller * (before = best < middle ? high - best : low - best);
            var place = best + (Math.Abs(step) >= tolerance ? step : Math.CopySign(tolerance, step));
            var cost = -level(place);
            if (cost <= bestCost)
            {
                (low, high) = place < best ? (low, best) : (best, high);
                (third, thirdCost, second, secondCost, best, bestCost) = (second, secondCost, best, bestCost, place, cost);
                continue;
            }
            (low, high) = place < best ? (place, high) : (low, place);
            if (cost <= secondCost || second == best)
                (third, thirdCost, second, secondCost) = (second, secondCost, place, cost);
            else if (cost <= thirdCost || third == best || third == second)
                (third, thirdCost) = (place, cost);
        }
        return best;
    }

    private static double Parabola(double best, double second, double third, double bestCost, double secondCost, double thirdCost)
    {
        var r = (best - second) * (bestCost - thirdCost);
        var q = (best - third) * (bestCost - secondCost);
        var numerator = (best - third) * q - (best - second) * r;
        var step = -numerator / (2 * (q - r));
        return double.IsFinite(step) ? step : double.PositiveInfinity;
    }
}
