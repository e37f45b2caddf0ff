using AutoSweep.Core.Fitting;
using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>One law fitted to the readings: where its peak is, how surely, and how well the law explains what was read.</summary>
internal sealed class LawFit
{
    private readonly LeastSquaresFit _fit;
    private readonly double[] _parameters;

    internal LawFit(ResponseLaw law, LeastSquaresFit fit, PeakPrior prior)
    {
        Law = law;
        _fit = fit;
        _parameters = [.. fit.Parameters];
        LogEvidence = -0.5 * fit.SumOfSquares + 0.5 * fit.LogDeterminantOfCovariance
            - (law == ResponseLaw.General ? Math.Log(SlowEffects.SlopeSd * SlowEffects.TrapLossSd) : 0);
        LogWeight = LogEvidence + LawOdds.LogWeight(prior, law);
        var peakScore = (LogPeak - Math.Log(prior.Expected.Picofarads)) / prior.LogSpread;
        var qScore = (_parameters[LawModel.LogQ] - Math.Log(prior.Q)) / prior.LogSpreadOfQ;
        Strays = Math.Abs(peakScore) > 3;
        Misfit = fit.SumOfSquares - peakScore * peakScore - qScore * qScore;
    }

    internal ResponseLaw Law { get; }

    /// <summary>Natural logarithm of the readings' probability under the law, up to a constant that all laws share (Laplace's approximation).</summary>
    internal double LogEvidence { get; }

    internal double LogWeight { get; }

    /// <summary>The sum of squares without the beliefs on peak and Q.</summary>
    internal double Misfit { get; }

    /// <summary>Whether the peak lies where the belief beforehand hardly allowed it.</summary>
    internal bool Strays { get; }

    internal double LogPeak => _parameters[LawModel.LogPeak];

    internal double LogPeakVariance => _fit.CovarianceOf(LawModel.LogPeak, LawModel.LogPeak);

    internal ReadOnlySpan<double> Parameters => _parameters;

    internal double HumPower => _parameters[LawModel.HumPower];

    internal double LogLevel => _parameters[LawModel.LogLevel];

    internal bool IsUsable => double.IsFinite(LogEvidence) && LogPeakVariance > 0;

    internal TunedResponse Response
    {
        get
        {
            var slope = Law switch { ResponseLaw.Series => 1.0, ResponseLaw.General => _parameters[LawModel.Slope], _ => 0.0 };
            var trapLoss = Law == ResponseLaw.General ? _parameters[LawModel.TrapLoss] : 0;
            return new(Math.Exp(LogPeak), Math.Exp(_parameters[LawModel.LogQ]), slope, slope * slope + trapLoss);
        }
    }

    /// <summary>The half-power half-width over the peak.</summary>
    internal double RelativeHalfWidth
    {
        get
        {
            var width = Response.HalfWidthPicofarads / Response.PeakPicofarads;
            return double.IsFinite(width) ? width : Math.Exp(-_parameters[LawModel.LogQ]);
        }
    }

    /// <summary>What this law expects of a reading: its logarithm, that one's variance, and its covariance with the peak's logarithm.</summary>
    internal (double LogLevel, double Variance, double CovarianceWithPeak) Predict(double picofarads, double minutes)
    {
        var size = _parameters.Length;
        Span<double> derivatives = stackalloc double[size];
        var predicted = LawModel.Predict(Law, _parameters, picofarads, minutes, derivatives);
        double variance = 0, covariance = 0;
        for (var i = 0; i < size; i++)
        {
            covariance += derivatives[i] * _fit.CovarianceOf(i, LawModel.LogPeak);
            for (var j = 0; j < size; j++)
                variance += derivatives[i] * derivatives[j] * _fit.CovarianceOf(i, j);
        }
        return (predicted, variance, covariance);
    }
}
