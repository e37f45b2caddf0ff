using AutoSweep.Core.Matching;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Benchmarks.Matching;

/// <summary>One invented shop matched both ways.</summary>
/// <param name="Name">The size.</param>
/// <param name="Ours">The match.</param>
/// <param name="Hands">Best pair first.</param>
/// <param name="Seconds">What the match took.</param>
internal sealed record MatchRun(string Name, MatchResult Ours, HandsResult Hands, double Seconds)
{
    /// <summary>The largest proven gap of any level.</summary>
    public double Gap => new[] { Ours.Outside, Ours.PartsUsed, Ours.Moved, Ours.TotalLoss }.Max(level => level.Gap);

    public static MatchRun Of(string name, int outputs, int parts, int seed, TimeProvider time)
    {
        var random = new Random(seed);
        var (targets, stock) = (InventedShop.Targets(outputs, random), InventedShop.Parts(parts, random));
        var options = new MatchOptions();
        var began = time.GetTimestamp();
        var ours = new Matcher(options, time).Match(new(targets, stock), CancellationToken.None);
        var seconds = time.GetElapsedTime(began).TotalSeconds;
        return new(name, ours, HandsMatch.Match(targets, stock, options.LossLimitDecibels), seconds);
    }
}
