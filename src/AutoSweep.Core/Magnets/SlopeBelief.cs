namespace AutoSweep.Core.Magnets;

/// <summary>What is believed of a rod's slope, in decibels a millimetre: a density over a net of slopes.</summary>
/// <remarks>
/// A net and not a formula, because the hand's error grows with the distance and so with the slope itself; the slope is above 0 and the prior wide. With
/// constant errors and a flat prior it is weighted least squares through the origin. Immutable.
/// </remarks>
public sealed class SlopeBelief
{
    // A factor of 33 to either side of the expectation, in steps of half a per cent: finer than any rod will tell.
    private const double Reach = 3.5;
    private const double Step = 0.005;
    private const int Points = (int)(2 * Reach / Step) + 1;

    private readonly double _expected;
    private readonly double[] _logs;
    private readonly Lazy<double[]> _cumulated;

    private SlopeBelief(double expected, double[] logs, int observations)
    {
        (_expected, _logs, Observations) = (expected, logs, observations);
        _cumulated = new(Cumulate);
    }

    /// <summary>How many moves the belief has seen.</summary>
    public int Observations { get; }

    /// <summary>The middle of the belief, in decibels a millimetre.</summary>
    public double Median => Quantile(0.5);

    /// <summary>The belief before any move: the logarithm of the slope is normal.</summary>
    /// <param name="expected">The expected slope in decibels a millimetre; above 0.</param>
    /// <param name="spread">One standard deviation of its natural logarithm; above 0.</param>
    public static SlopeBelief Prior(double expected, double spread)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(expected);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spread);
        return new(expected, [.. Enumerable.Range(0, Points).Select(i => -0.5 * Math.Pow(At(i) / spread, 2))], 0);
    }

    /// <summary>The belief after one more move.</summary>
    /// <param name="outward">How far out the rod was to go, in millimetres; below 0 for in.</param>
    /// <param name="outwardSd">One standard deviation of how far it went.</param>
    /// <param name="decibels">By how much the level rose.</param>
    /// <param name="decibelsSd">One standard deviation of that by the two readings.</param>
    public SlopeBelief With(double outward, double outwardSd, double decibels, double decibelsSd) => new(
        _expected, [.. _logs.Select((log, i) => log + LogLikelihood(Slope(i), outward, outwardSd, decibels, decibelsSd))], Observations + 1);

    /// <summary>The slope that the true one stays under with a probability.</summary>
    /// <param name="probability">0 to 1.</param>
    public double Quantile(double probability)
    {
        var cumulated = _cumulated.Value;
        var at = Array.BinarySearch(cumulated, probability);
        var above = Math.Clamp(at >= 0 ? at : ~at, 1, Points - 1);
        var (below, width) = (cumulated[above - 1], cumulated[above] - cumulated[above - 1]);
        var part = width > 0 ? Math.Clamp((probability - below) / width, 0, 1) : 1;
        return _expected * Math.Exp(At(above - 1) + (part * Step));
    }

    private static double At(int index) => -Reach + (index * Step);

    private static double LogLikelihood(double slope, double outward, double outwardSd, double decibels, double decibelsSd)
    {
        var variance = (slope * slope * outwardSd * outwardSd) + (decibelsSd * decibelsSd);
        var residual = decibels + (slope * outward);
        return -0.5 * ((residual * residual / variance) + Math.Log(variance));
    }

    private double Slope(int index) => _expected * Math.Exp(At(index));

    // By the trapezoidal rule; a rule of sums alone would be half a step off.
    private double[] Cumulate()
    {
        var most = _logs.Max();
        var cumulated = new double[Points];
        for (var i = 1; i < Points; i++)
            cumulated[i] = cumulated[i - 1] + (0.5 * (Math.Exp(_logs[i - 1] - most) + Math.Exp(_logs[i] - most)));
        return [.. cumulated.Select(one => one / cumulated[^1])];
    }
}
