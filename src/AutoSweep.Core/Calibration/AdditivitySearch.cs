using System.Globalization;
using System.Numerics;
using AutoSweep.Core.Fitting;

namespace AutoSweep.Core.Calibration;

/// <summary>Looks for what breaks additivity, and fits what is left.</summary>
/// <remarks>First for one relay that adds another value in company than alone, then for one that at times did not close; else for single
/// sets that are off, by leaving out the one whose absence betters the fit most, until the rest adds up.</remarks>
internal static class AdditivitySearch
{
    // More than a third of the sets off is no longer an exception of the rule.
    private const int MostLeftOut = 3;

    /// <summary>The fit to trust, and what was found on the way to it.</summary>
    public static (LinearFit Fit, IReadOnlyList<RelayFinding> Findings) Run(AdditiveModel model)
    {
        var fit = model.Fit(model.Sets) ?? throw new ArgumentException("The readings do not tell every relay.", nameof(model));
        if (model.Holds(fit))
            return (fit, []);
        if (Company(model) is { } company)
            return (fit, [company]);
        return IntermittentRelay.Find(model) ?? LeaveOut(model, fit);
    }

    private static RelayFinding? Company(AdditiveModel model)
    {
        var best = Enumerable.Range(0, model.Relays)
            .Select(relay => (Relay: relay, Fit: model.Fit(model.Sets, set => InCompany(set, relay) ? 1 : 0)))
            .Where(candidate => candidate.Fit is not null)
            .MinBy(candidate => candidate.Fit!.ChiSquared);
        return best.Fit is { } fit && model.Holds(fit) ? new(
            RelayFindingKind.OffWhenCombined, best.Relay + 1,
            string.Create(
                CultureInfo.InvariantCulture, $"beside other relays it adds {fit.Coefficients[^1]:+0.0;-0.0} pF more than alone")) : null;
    }

    private static bool InCompany(CalibrationSet set, int relay) => set.Holds(relay) && BitOperations.PopCount(set.Closed) > 1;

    private static (LinearFit Fit, IReadOnlyList<RelayFinding> Findings) LeaveOut(AdditiveModel model, LinearFit first)
    {
        var (fit, used) = (first, model.Sets.ToList());
        List<CalibrationSet> leftOut = [];
        while (!model.Holds(fit) && leftOut.Count < model.Sets.Count / MostLeftOut)
        {
            var worst = used.Index().MaxBy(set => fit.ChiSquaredWithout(set.Index, model.Sd(set.Item))).Item;
            List<CalibrationSet> rest = [.. used.Where(set => set != worst)];
            if (model.Fit(rest) is not { } better)
                break;
            (fit, used) = (better, rest);
            leftOut.Add(worst);
        }

        return model.Holds(fit) ? (fit, Explain(model, fit, leftOut)) : (first, [Unexplained(model, first, leftOut)]);
    }

    private static IReadOnlyList<RelayFinding> Explain(AdditiveModel model, LinearFit fit, IReadOnlyList<CalibrationSet> leftOut)
    {
        var best = Enumerable.Range(0, model.Relays)
            .Select(relay => (Relay: relay, Sets: leftOut.Where(set => ExplainedBy(model, fit, set, relay)).ToArray()))
            .MaxBy(candidate => candidate.Sets.Length);
        return best.Sets.Length == 0 ? [Unexplained(model, fit, leftOut)] : [new(
            RelayFindingKind.Intermittent, best.Relay + 1,
            $"in {best.Sets.Length} of {model.Sets.Count} sets it did not do as told: "
            + string.Join("; ", best.Sets.Take(3).Select(SetText)))];
    }

    // A set with the relay that reads low by just its capacitance, or one without it that reads as much high.
    private static bool ExplainedBy(AdditiveModel model, LinearFit fit, CalibrationSet set, int relay)
    {
        var missing = set.Holds(relay) ? -fit.Coefficients[1 + relay] : fit.Coefficients[1 + relay];
        return Math.Abs(set.Mean - model.Predicted(fit, set) - missing) < Math.Max(6 * model.Sd(set), 0.003 * Math.Abs(missing));
    }

    private static RelayFinding Unexplained(AdditiveModel model, LinearFit fit, IReadOnlyList<CalibrationSet> leftOut)
    {
        var worst = leftOut[0];
        return new(RelayFindingKind.NotAdditive, null, string.Create(CultureInfo.InvariantCulture,
            $"{SetText(worst)} measures {worst.Mean:0.0} pF where the relays' values make {model.Predicted(fit, worst):0.0} pF"));
    }

    /// <summary>A set as the fixture's channel lists are written.</summary>
    public static string SetText(CalibrationSet set) =>
        set.Closed == 0 ? "all open" : "(@" + string.Join(',', Enumerable.Range(0, 32).Where(set.Holds).Select(relay => relay + 1)) + ")";
}
