using System.Globalization;
using AutoSweep.Core.Fitting;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Calibration;

/// <summary>Finds relays that leak, from the dissipation: the parallel conductance D·ω·C adds up over relays as the capacitance
/// does.</summary>
internal static class LossRule
{
    private const double CoverageFactor = 3;

    // Below this a bench meter's D is noise whatever it shows (last digit of a usual display).
    private const double FinestDissipation = 1e-6;

    // The scatter of D where nothing was read twice: about a bench meter's basic accuracy (0.0005, from memory).
    private const double AssumedScatter = 5e-4;

    public static IEnumerable<RelayFinding> Findings(
        AdditiveModel model, IReadOnlyList<CalibratedValue> relays, IReadOnlySet<int> dead, CalibrationSolverOptions options)
    {
        if (model.Sets.Any(set => set.Dissipation is null))
            yield break;
        var scatter = model.Sets
            .Where(set => set.Count > 1).Select(set => Math.Sqrt(set.DissipationVariance)).DefaultIfEmpty(AssumedScatter);
        var sd = Math.Max(scatter.Median(), FinestDissipation);
        var fit = AdditiveModel.Fit(model.Sets, model.Relays, set => set.Dissipation!.Value * set.Mean, set => Sd(model, set, sd));
        foreach (var (index, relay) in relays.Index().Where(relay => fit is not null && !dead.Contains(relay.Index)))
        {
            if (Finding(fit!, index, relay, options.LeakLossTangent) is { } finding)
                yield return finding;
        }
    }

    // Of D·C: that of D, and, where the loss is large, that of C.
    private static double Sd(AdditiveModel model, CalibrationSet set, double sd) => Math.Sqrt(
        Math.Pow(sd * set.Mean, 2) / set.Count + Math.Pow(set.Dissipation!.Value * model.Sd(set), 2));

    private static RelayFinding? Finding(LinearFit fit, int index, CalibratedValue relay, double limit)
    {
        var tangent = fit.Coefficients[1 + index] / relay.Picofarads;
        var slack = CoverageFactor * Math.Sqrt(fit.Covariance[1 + index, 1 + index]) / relay.Picofarads;
        var text = string.Create(
            CultureInfo.InvariantCulture, $"closing it adds a loss tangent of {tangent:0.0000} (sound: below {limit:0.0000})");
        return (tangent - slack > limit, tangent + slack < -limit) switch
        {
            (true, _) => new(RelayFindingKind.Leaking, index + 1, text),
            (_, true) => new(RelayFindingKind.LeakingWhileOpen, index + 1, text),
            _ => null,
        };
    }
}
