using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>How the peak search does over many sources.</summary>
public sealed class SearchScore(IReadOnlyList<SearchOutcome> outcomes)
{
    /// <summary>Every source with its answer.</summary>
    public IReadOnlyList<SearchOutcome> Outcomes => outcomes;

    /// <summary>The share of stated intervals that miss the truth.</summary>
    public double ShareOutside => outcomes.Count(outcome => outcome.IsOutside) / (double)outcomes.Count;

    /// <summary>The share of searches that did not reach their bound.</summary>
    public double ShareFailed => outcomes.Count(outcome => outcome.Result.Reason != PeakStopReason.BoundReached) / (double)outcomes.Count;

    /// <summary>The root mean square of error over the Cramér-Rao bound, series and shunt; a single error counts for six at most.</summary>
    public double ErrorOverCramerRaoBound => Math.Sqrt(outcomes
        .Where(outcome => outcome.Source.Family <= SourceFamily.Shunt && outcome.Result.Peak is not null)
        .Average(outcome => Math.Min(Math.Pow(outcome.ErrorOverCramerRaoBound, 2), 36)));

    /// <summary>Half of the searches needed no more readings.</summary>
    public double MedianReadings => Quantile(0.5, outcomes.Select(outcome => (double)outcome.Result.Trace.Count));

    /// <summary>Searches every source.</summary>
    public static SearchScore Of(IReadOnlyList<RandomSource> sources) =>
        new([.. sources.AsParallel().AsOrdered().Select(source => new SearchOutcome(source, SearchRun.Of(source)))]);

    /// <summary>The decibels that this share of the searches in these families stays under.</summary>
    public double LossQuantile(double share, params SourceFamily[] families) =>
        Quantile(share, outcomes.Where(outcome => families.Contains(outcome.Source.Family)).Select(outcome => outcome.LossDecibels));

    /// <summary>The figure that this share of the values does not exceed: the smallest value with at least that share at or below it.</summary>
    public static double Quantile(double share, IEnumerable<double> values)
    {
        double[] ordered = [.. values.Order()];
        return ordered[Math.Clamp((int)Math.Ceiling(share * ordered.Length) - 1, 0, ordered.Length - 1)];
    }
}
