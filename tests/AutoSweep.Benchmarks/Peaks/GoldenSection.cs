namespace AutoSweep.Benchmarks.Peaks;

/// <summary>Golden-section search for a maximum (Kiefer, Proc. AMS 4, 1953).</summary>
internal static class GoldenSection
{
    private static readonly double Shorter = (Math.Sqrt(5) - 1) / 2;

    internal static double Find(Func<double, double> level, double low, double high, int readings)
    {
        var (left, right) = (high - Shorter * (high - low), low + Shorter * (high - low));
        var (leftLevel, rightLevel) = (level(left), level(right));
        for (var i = 2; i < readings; i++)
        {
            if (leftLevel > rightLevel)
            {
                (high, right, rightLevel) = (right, left, leftLevel);
                left = high - Shorter * (high - low);
                leftLevel = level(left);
            }
            else
            {
                (low, left, leftLevel) = (left, right, rightLevel);
                right = low + Shorter * (high - low);
                rightLevel = level(right);
            }
        }
        return leftLevel > rightLevel ? left : right;
    }
}
