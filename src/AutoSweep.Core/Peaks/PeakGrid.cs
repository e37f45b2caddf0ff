using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>A coarse net of possible peaks with the probability of each: it chooses the first readings and starts the fits.</summary>
/// <remarks>
/// The level at the peak is taken out of every point of the net exactly (it is a free factor), so a reading costs one logarithm a point.
/// </remarks>
internal sealed class PeakGrid
{
    private const int Peaks = 81;

    // In standard deviations of the belief.
    private const double Reach = 3.2;

    private static readonly double[] Qs = [3.2, 4.5, 6.3, 8.9, 12.5, 17.5, 25, 35];
    private static readonly double[] Hums = [0, 0.0015];
    private static readonly (ResponseLaw Law, double Slope)[] Laws =
    [
        (ResponseLaw.Series, 1),
        (ResponseLaw.Shunt, 0),
        (ResponseLaw.General, -0.7),
        (ResponseLaw.General, 0.5),
        (ResponseLaw.General, 1.5),
        (ResponseLaw.General, 2.4),
    ];

    private static readonly int PointsPerLaw = Peaks * Qs.Length * Hums.Length;

    // The net is coarser than the noise: half a step of the net changes a flank's level by some per cent.
    private const double NetSd = 0.04;

    private readonly double[] _picofarads;
    private readonly double[] _logPeaks;
    private readonly double[] _logPrior;
    private readonly double[] _sumResidual;
    private readonly double[] _sumSquare;
    private double _sumWeight;

    internal PeakGrid(PeakPrior prior)
    {
        var size = PointsPerLaw * Laws.Length;
        _logPrior = new double[size];
        _sumResidual = new double[size];
        _sumSquare = new double[size];
        _logPeaks = [.. Enumerable.Range(0, Peaks).Select(i => Math.Log(prior.Expected.Picofarads) + Spread(prior) * Score(i))];
        _picofarads = [.. _logPeaks.Select(Math.Exp)];
        for (var k = 0; k < size; k++)
            _logPrior[k] = LogPrior(prior, k);
    }

    internal int Count => _logPrior.Length;

    internal void Tell(FitPoint point)
    {
        var weight = 1 / (point.Sd * point.Sd + NetSd * NetSd);
        _sumWeight += weight;
        for (var k = 0; k < _logPrior.Length; k++)
        {
            var residual = point.LogLevel - LogShape(k, point.Picofarads);
            _sumResidual[k] += weight * residual;
            _sumSquare[k] += weight * residual * residual;
        }
    }

    /// <summary>Forgets every reading.</summary>
    internal void Forget()
    {
        _sumWeight = 0;
        Array.Clear(_sumResidual);
        Array.Clear(_sumSquare);
    }

    internal double LogPosterior(int k) => _logPrior[k]
        - (_sumWeight > 0 ? 0.5 * (_sumSquare[k] - _sumResidual[k] * _sumResidual[k] / _sumWeight) : 0);

    /// <summary>The probability of every point; they add up to 1.</summary>
    internal double[] Weights()
    {
        var weights = new double[Count];
        var top = double.NegativeInfinity;
        for (var k = 0; k < weights.Length; k++)
            top = Math.Max(top, weights[k] = LogPosterior(k));
        var sum = 0.0;
        for (var k = 0; k < weights.Length; k++)
            sum += weights[k] = weights[k] < top - 20 ? 0 : Math.Exp(weights[k] - top);
        for (var k = 0; k < weights.Length; k++)
            weights[k] /= sum;
        return weights;
    }

    internal double MeanLogLevel(int k) => _sumWeight > 0 ? _sumResidual[k] / _sumWeight : 0;

    internal double LogPeak(int k) => _logPeaks[k % Peaks];

    internal double Peak(int k) => _picofarads[k % Peaks];

    internal static ResponseLaw Law(int k) => Laws[k / PointsPerLaw].Law;

    /// <summary>The most probable point of a law, or of the rest of it beyond a tenth from a peak; −1 when there is none.</summary>
    internal int Best(ResponseLaw law, double awayFromPeak)
    {
        var (best, bestValue) = (-1, double.NegativeInfinity);
        for (var k = 0; k < Count; k++)
        {
            if (Law(k) != law || Math.Abs(Peak(k) / awayFromPeak - 1) < 0.1)
                continue;
            var value = LogPosterior(k);
            if (value > bestValue)
                (best, bestValue) = (k, value);
        }
        return best;
    }

    /// <summary>The most probable point under every slope of the numerator that the net holds for a law.</summary>
    internal IEnumerable<int> BestOfEverySlope(ResponseLaw law)
    {
        for (var block = 0; block < Laws.Length; block++)
            if (Laws[block].Law == law)
                yield return Enumerable.Range(block * PointsPerLaw, PointsPerLaw).MaxBy(LogPosterior);
    }

    /// <summary>A fit's start at a point of the net.</summary>
    internal double[] Start(int k)
    {
        double[] common = [MeanLogLevel(k), Math.Log(Peak(k)), Math.Log(Q(k)), Math.Max(Hum(k), 0.0003), 0];
        return Law(k) == ResponseLaw.General ? [.. common, Slope(k), SlowEffects.TrapLoss] : common;
    }

    internal double LogShape(int k, double picofarads)
    {
        var y = picofarads / Peak(k) - 1;
        var numerator = 1 + Slope(k) * y;
        numerator *= numerator;
        return 0.5 * Math.Log(numerator / (numerator + Q(k) * Q(k) * y * y) + Hum(k) + 1e-6);
    }

    // A group may teach a narrow belief; its next output may still be the odd one.
    private static double Spread(PeakPrior prior) => Math.Max(prior.LogSpread, 0.2);

    private static double Score(int i) => Reach * (2.0 * i / (Peaks - 1) - 1);

    private static double Q(int k) => Qs[k / Peaks % Qs.Length];

    private static double Hum(int k) => Hums[k / (Peaks * Qs.Length) % Hums.Length];

    private static double Slope(int k) => Laws[k / PointsPerLaw].Slope;

    private static double LogPrior(PeakPrior prior, int k)
    {
        var away = Spread(prior) * Score(k % Peaks);
        var near = Math.Exp(-0.5 * Math.Pow(away / prior.LogSpread, 2)) / prior.LogSpread;
        var far = Math.Exp(-0.5 * Math.Pow(away / Spread(prior), 2)) / Spread(prior);
        var qScore = Math.Log(Q(k) / prior.Q) / prior.LogSpreadOfQ;
        return Math.Log(0.9 * near + 0.1 * far) - 0.5 * qScore * qScore + LawOdds.LogWeight(prior, Law(k)) - (Law(k) == ResponseLaw.General ? Math.Log(4) : 0);
    }
}
