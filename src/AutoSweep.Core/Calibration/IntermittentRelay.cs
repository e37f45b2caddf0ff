using AutoSweep.Core.Fitting;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Calibration;

/// <summary>Tries on every relay the thought that it did not close in some of its sets, and whether the readings add up then.</summary>
internal static class IntermittentRelay
{
    // A missing relay must stand out of a set's noise by so much before the set is taken to lack it.
    private const double StandsOut = 6;

    /// <summary>The fit with the relay taken out of the sets that it failed in; null where no relay explains the readings.</summary>
    public static (LinearFit Fit, IReadOnlyList<RelayFinding> Findings)? Find(AdditiveModel model)
    {
        if (Alone(model) is not { } alone)
            return null;
        var best = Enumerable.Range(0, model.Relays)
            .Select(relay => (Relay: relay, Failed: FailedIn(model, alone, relay)))
            .Where(candidate => candidate.Failed.Count > 0)
            .Select(candidate => (candidate.Relay, candidate.Failed, Fit: Fit(model, candidate.Relay, candidate.Failed)))
            .Where(candidate => candidate.Fit is not null && model.Holds(candidate.Fit))
            .MinBy(candidate => candidate.Fit!.ChiSquared);
        return best.Fit is { } fit ? (fit, [Finding(model, best.Relay, best.Failed)]) : null;
    }

    // The open fixture and each relay's reading alone less it; null where one was not read alone.
    private static double[]? Alone(AdditiveModel model)
    {
        var means = model.Sets.ToDictionary(set => set.Closed, set => set.Mean);
        return means.TryGetValue(0, out var stray) && Enumerable.Range(0, model.Relays).All(relay => means.ContainsKey(1u << relay))
            ? [stray, .. Enumerable.Range(0, model.Relays).Select(relay => means[1u << relay] - stray)]
            : null;
    }

    private static HashSet<CalibrationSet> FailedIn(AdditiveModel model, double[] alone, int relay)
    {
        var with = model.Sets.Where(set => set.Holds(relay)).ToArray();
        double Added(CalibrationSet set) => set.Mean - alone[0] - Enumerable.Range(0, model.Relays)
            .Where(other => other != relay && set.Holds(other)).Sum(other => alone[1 + other]);
        var usual = with.Select(Added).Median();
        return [.. with.Where(set => usual > StandsOut * model.Sd(set) && Added(set) < usual / 2)];
    }

    private static LinearFit? Fit(AdditiveModel model, int relay, HashSet<CalibrationSet> failed) =>
        model.Fit([.. model.Sets.Select(set => failed.Contains(set) ? set.Without(relay) : set)]);

    private static RelayFinding Finding(AdditiveModel model, int relay, HashSet<CalibrationSet> failed) => new(
        RelayFindingKind.Intermittent, relay + 1,
        $"it did not close in {failed.Count} of the {model.Sets.Count(set => set.Holds(relay))} sets with it: "
        + string.Join("; ", failed.Take(3).Select(AdditivitySearch.SetText)));
}
