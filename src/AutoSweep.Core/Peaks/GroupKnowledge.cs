using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What the finished outputs of a group teach of the next one: how far off the expected value, what Q, which law.</summary>
/// <remarks>
/// Outputs of a group share coil and filter family. Learning gives a new value; the old one stays. Only searches that reached their
/// bound teach. Medians, and a limit on what one output may say of the law, keep one odd output from misleading the others.
/// </remarks>
public sealed class GroupKnowledge
{
    // What one output may add to the odds of the law: e^4 is 55 to 1. Three like ones are as good as sure.
    private const double MostFromOne = 4;
    private const double MostOfAll = 12;

    // A group is never trusted beyond this: aged coils of one family still differ by a few per cent (measured example: trade figures, 92 to 116 nF).
    private const double LeastLogSpread = 0.05;
    private const double LeastLogSpreadOfQ = 0.2;

    // What a single output says of the spread of its group: nothing, so a middling one is assumed.
    private const double SpreadAssumed = 0.15;

    private readonly double[] _logRatios;
    private readonly double[] _logQs;
    private readonly double _logOddsSeriesOverShunt;
    private readonly double _logOddsGeneral;

    private GroupKnowledge(double[] logRatios, double[] logQs, double logOddsSeriesOverShunt, double logOddsGeneral)
    {
        _logRatios = logRatios;
        _logQs = logQs;
        _logOddsSeriesOverShunt = logOddsSeriesOverShunt;
        _logOddsGeneral = logOddsGeneral;
    }

    /// <summary>A group of which nothing has been swept yet.</summary>
    public static GroupKnowledge None { get; } = new([], [], 0, 0);

    /// <summary>How many outputs have taught.</summary>
    public int Outputs => _logRatios.Length;

    /// <summary>The group's knowledge with one more output; unchanged where its search did not reach its bound.</summary>
    /// <param name="result">The output's answer.</param>
    /// <param name="expected">The capacitance that the profile expected of it.</param>
    public GroupKnowledge Learn(PeakResult result, Capacitance expected)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Reason != PeakStopReason.BoundReached || result.Peak is not { Picofarads: > 0 } peak || expected.Picofarads <= 0)
            return this;
        return new(
            [.. _logRatios, Math.Log((double)peak.Picofarads / expected.Picofarads)],
            [.. _logQs, Math.Log(result.Q)],
            _logOddsSeriesOverShunt + Math.Clamp(result.LogOddsSeriesOverShunt, -MostFromOne, MostFromOne),
            _logOddsGeneral + Math.Clamp(result.LogOddsGeneral, -MostFromOne, MostFromOne));
    }

    /// <summary>What to believe of the group's next output.</summary>
    /// <param name="expected">The capacitance that the profile expects of it.</param>
    public PeakPrior PriorFor(Capacitance expected) => PriorFor(new PeakPrior { Expected = expected });

    /// <summary>What to believe of the group's next output, beginning from an own belief (a profile that names the law, for example).</summary>
    /// <param name="before">The belief without the group.</param>
    public PeakPrior PriorFor(PeakPrior before)
    {
        ArgumentNullException.ThrowIfNull(before);
        if (Outputs == 0)
            return before;
        var (logRatio, logSpread) = Blend(_logRatios, 0, before.LogSpread, LeastLogSpread);
        var (logQ, logSpreadOfQ) = Blend(_logQs, Math.Log(before.Q), before.LogSpreadOfQ, LeastLogSpreadOfQ);
        return before with
        {
            Expected = Capacitance.FromPicofarads(before.Expected.Picofarads * Math.Exp(logRatio)),
            LogSpread = logSpread,
            Q = Math.Exp(logQ),
            LogSpreadOfQ = logSpreadOfQ,
            LogOddsSeriesOverShunt = Math.Clamp(before.LogOddsSeriesOverShunt + _logOddsSeriesOverShunt, -MostOfAll, MostOfAll),
            LogOddsGeneral = Math.Clamp(before.LogOddsGeneral + _logOddsGeneral, -MostOfAll, MostOfAll),
        };
    }

    // The belief beforehand counts as one output; the rest is the outputs' median and their median distance from it.
    private static (double Centre, double Spread) Blend(double[] values, double before, double spreadBefore, double least)
    {
        var count = values.Length;
        var median = Median(values);
        var own = count < 3 ? SpreadAssumed : 1.4826 * Median([.. values.Select(value => Math.Abs(value - median))]);
        var variance = (spreadBefore * spreadBefore + count * own * own * (1 + 1.0 / count)) / (count + 1);
        return ((before + count * median) / (count + 1), Math.Clamp(Math.Sqrt(variance), least, spreadBefore));
    }

    private static double Median(double[] values)
    {
        double[] ordered = [.. values.Order()];
        var middle = ordered.Length / 2;
        return ordered.Length % 2 == 1 ? ordered[middle] : (ordered[middle - 1] + ordered[middle]) / 2;
    }
}
