using AutoSweep.Core.Matching;

namespace AutoSweep.Worker.Parts;

/// <summary>What a measured combination means for its output.</summary>
/// <param name="Measured">What the meter read.</param>
/// <param name="LossDecibels">The expected loss with it, the meter's uncertainty and the peak's included.</param>
/// <param name="Verdict">Whether it may be soldered in.</param>
public sealed record FitCheck(MeasuredPart Measured, double LossDecibels, FitVerdict Verdict)
{
    /// <summary>Judges a measured combination.</summary>
    public static FitCheck Of(FitLine line, MeasuredPart measured, FitOptions options)
    {
        var variance = measured.StandardUncertaintyPicofarads * measured.StandardUncertaintyPicofarads;
        var loss = new LevelLoss(line.Target).Decibels(measured.Capacitance.Picofarads, variance);
        return new(measured, loss, Judge(line, measured, loss, options));
    }

    private static FitVerdict Judge(FitLine line, MeasuredPart measured, double loss, FitOptions options)
    {
        if (loss <= options.LossLimitDecibels)
            return FitVerdict.Good;
        var expected = (double)line.Combination.Sum.Picofarads;
        return Math.Abs(measured.Capacitance.Picofarads - expected) > options.WrongPartShare * expected ? FitVerdict.WrongPart : FitVerdict.OutsideLimit;
    }
}
