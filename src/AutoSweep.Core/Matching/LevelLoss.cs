using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Matching;

/// <summary>The level that an output loses with another capacitance than the one it wants.</summary>
/// <remarks>
/// 10 log10(1 + u²) decibels, with u the detuning in half-widths: (C - C*)/w where 1/V² is a parabola in C (shunt law), Q (1 - C*/C)
/// where it is one in 1/C (series law); there the half-power points lie at C*/(1 ± 1/Q), so w = C* q/(1 - q²) with q = 1/Q. The
/// expected loss takes the mean of u²: the square at the values as measured plus the variances of target and parts over w². By
/// Jensen's inequality that is never less than the mean of the loss itself, and equal to it in the limit of small losses.
/// </remarks>
public sealed class LevelLoss
{
    private readonly double _wanted;
    private readonly double _halfWidth;
    private readonly double _variance;
    private readonly double? _seriesQ;

    /// <summary>The loss of one output.</summary>
    public LevelLoss(MatchTarget target)
    {
        (_wanted, _halfWidth, _variance) = (target.Wanted.Picofarads, target.HalfWidthPicofarads,
            target.SdPicofarads * target.SdPicofarads);
        var ratio = _halfWidth / _wanted;
        _seriesQ = target.Law == ResponseLaw.Series ? 2 * ratio / (Math.Sqrt(1 + (4 * ratio * ratio)) - 1) : null;
    }

    /// <summary>The expected square of the detuning, in half-widths squared.</summary>
    /// <param name="picofarads">The capacitance fitted.</param>
    /// <param name="variance">The variance of that value in picofarads squared.</param>
    public double MeanSquare(double picofarads, double variance)
    {
        var detuning = _seriesQ is { } q ? q * (1 - (_wanted / picofarads)) : (picofarads - _wanted) / _halfWidth;
        return (detuning * detuning) + ((_variance + variance) / (_halfWidth * _halfWidth));
    }

    /// <summary>The expected loss in decibels.</summary>
    /// <param name="picofarads">The capacitance fitted.</param>
    /// <param name="variance">The variance of that value in picofarads squared.</param>
    public double Decibels(double picofarads, double variance = 0) => ToDecibels(MeanSquare(picofarads, variance));

    /// <summary>The loss at a mean square of the detuning.</summary>
    public static double ToDecibels(double meanSquare) => 10 * Math.Log10(1 + meanSquare);

    /// <summary>The capacitances between which the loss stays within a limit; none where the target's own uncertainty costs more.</summary>
    /// <param name="limitDecibels">The limit in decibels.</param>
    public (double Least, double Most)? Window(double limitDecibels)
    {
        var square = Math.Pow(10, limitDecibels / 10) - 1 - (_variance / (_halfWidth * _halfWidth));
        if (square < 0)
            return null;
        var detuning = Math.Sqrt(square);
        if (_seriesQ is not { } q)
            return (_wanted - (detuning * _halfWidth), _wanted + (detuning * _halfWidth));
        return (_wanted / (1 + (detuning / q)), detuning < q ? _wanted / (1 - (detuning / q)) : double.PositiveInfinity);
    }
}
