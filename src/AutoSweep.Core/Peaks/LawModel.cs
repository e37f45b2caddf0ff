using AutoSweep.Core.Fitting;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>The residuals of readings, and of beliefs held before them, under one response law.</summary>
internal sealed class LawModel : ILeastSquaresModel
{
    internal const int LogLevel = 0, LogPeak = 1, LogQ = 2, HumPower = 3, Drift = 4, Slope = 5, TrapLoss = 6;

    private readonly ResponseLaw _law;
    private readonly FitPoint[] _points;
    private readonly PeakPrior _prior;
    private readonly double _humSd;

    internal LawModel(ResponseLaw law, FitPoint[] points, PeakPrior prior, double humSd)
    {
        _law = law;
        _points = points;
        _prior = prior;
        _humSd = humSd;
        Parameters = law == ResponseLaw.General ? 7 : 5;
        Residuals = points.Length + Parameters - 1;
    }

    public int Parameters { get; }

    public int Residuals { get; }

    public void Evaluate(ReadOnlySpan<double> parameters, Span<double> residuals, Span<double> jacobian)
    {
        jacobian.Clear();
        for (var i = 0; i < _points.Length; i++)
        {
            var row = jacobian.Slice(i * Parameters, Parameters);
            residuals[i] = (Predict(_law, parameters, _points[i].Picofarads, _points[i].Minutes, row) - _points[i].LogLevel) / _points[i].Sd;
            foreach (ref var derivative in row)
                derivative /= _points[i].Sd;
        }
        Believe(parameters, residuals, jacobian);
    }

    /// <summary>The predicted logarithm of the level and its derivatives.</summary>
    internal static double Predict(ResponseLaw law, ReadOnlySpan<double> p, double picofarads, double minutes, Span<double> derivatives)
    {
        var (slope, trapLoss) = law switch
        {
            ResponseLaw.Series => (1.0, 0.0),
            ResponseLaw.General => (p[Slope], p[TrapLoss]),
            _ => (0.0, 0.0),
        };
        var y = picofarads * Math.Exp(-p[LogPeak]) - 1;
        var q2 = Math.Exp(2 * p[LogQ]);
        var curvature = slope * slope + trapLoss;
        var numerator = 1 + y * (2 * slope + curvature * y);
        var denominator = numerator + q2 * y * y;
        var power = numerator / denominator + p[HumPower];
        if (!(numerator > 0) || !(power > 1e-7))
            return double.NaN;
        var perPower = 0.5 / (power * denominator * denominator);
        derivatives[LogLevel] = 1;
        derivatives[LogPeak] = -(1 + y) * q2 * y * ((2 * slope + 2 * curvature * y) * y - 2 * numerator) * perPower;
        derivatives[LogQ] = -2 * q2 * y * y * numerator * perPower;
        derivatives[HumPower] = 0.5 / power;
        derivatives[Drift] = minutes;
        if (law == ResponseLaw.General)
        {
            derivatives[Slope] = q2 * y * y * (2 * y + 2 * slope * y * y) * perPower;
            derivatives[TrapLoss] = q2 * y * y * y * y * perPower;
        }
        return p[LogLevel] + p[Drift] * minutes + 0.5 * Math.Log(power);
    }

    private void Believe(ReadOnlySpan<double> p, Span<double> residuals, Span<double> jacobian)
    {
        Belief(LogPeak, p, Math.Log(_prior.Expected.Picofarads), _prior.LogSpread, residuals, jacobian);
        Belief(LogQ, p, Math.Log(_prior.Q), _prior.LogSpreadOfQ, residuals, jacobian);
        Belief(HumPower, p, SlowEffects.HumPower, _humSd, residuals, jacobian);
        Belief(Drift, p, 0, SlowEffects.DriftPerMinuteSd, residuals, jacobian);
        if (_law != ResponseLaw.General)
            return;
        Belief(Slope, p, SlowEffects.Slope, SlowEffects.SlopeSd, residuals, jacobian);
        Belief(TrapLoss, p, SlowEffects.TrapLoss, SlowEffects.TrapLossSd, residuals, jacobian);
    }

    private void Belief(int parameter, ReadOnlySpan<double> p, double mean, double sd, Span<double> residuals, Span<double> jacobian)
    {
        var row = _points.Length + parameter - 1;
        residuals[row] = (p[parameter] - mean) / sd;
        jacobian[row * Parameters + parameter] = 1 / sd;
    }
}
