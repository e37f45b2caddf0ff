using System.Globalization;

namespace AutoSweep.Core.Calibration;

/// <summary>Finds relays that do not switch, or that add what they cannot.</summary>
internal static class SwitchingRule
{
    // An open contact's own capacitance changes by less when its coil pulls (data sheets of signal relays: below 1 pF, from memory).
    private const double Nothing = 2;

    // A value that noise hides is neither dead nor odd: both must be shown, at three standard uncertainties.
    private const double CoverageFactor = 3;

    // Where the relays' places in the decades are not known: well below the smallest usual relay, 100 pF.
    private const double SmallestUsual = 50;

    // A stuck relay may be this far off its nominal value (usual parts are within 5 %).
    private const double Tolerance = 0.1;

    /// <summary>The relays, from 0, that add nothing.</summary>
    public static IReadOnlySet<int> Dead(IReadOnlyList<CalibratedValue> relays, CalibrationSolverOptions options) => relays.Index()
        .Where(relay => AddsNothing(relay.Item, options.NominalPicofarads?[relay.Index] / 2 ?? SmallestUsual))
        .Select(relay => relay.Index)
        .ToHashSet();

    private static bool AddsNothing(CalibratedValue relay, double least) =>
        relay.Picofarads < Math.Max(Nothing, CoverageFactor * relay.NoiseStandardUncertainty) && IsBelow(relay, least);

    private static bool IsBelow(CalibratedValue relay, double limit) =>
        relay.Picofarads + (CoverageFactor * relay.NoiseStandardUncertainty) < limit;

    private static bool IsAbove(CalibratedValue relay, double limit) =>
        relay.Picofarads - (CoverageFactor * relay.NoiseStandardUncertainty) > limit;

    public static IEnumerable<RelayFinding> Findings(
        CalibratedValue stray, IReadOnlyList<CalibratedValue> relays, IReadOnlySet<int> dead, CalibrationSolverOptions options)
    {
        foreach (var relay in dead.Order())
            yield return new(Kind(stray.Picofarads, options.NominalPicofarads?[relay], options), relay + 1, Evidence(relays[relay], stray));
        foreach (var (index, relay) in relays.Index().Where(relay => !dead.Contains(relay.Index)))
        {
            if (options.NominalPicofarads?[index] is { } nominal && (IsBelow(relay, nominal / 2) || IsAbove(relay, nominal * 2)))
                yield return new(RelayFindingKind.UnlikelyValue, index + 1, string.Create(CultureInfo.InvariantCulture,
                    $"it adds {relay.Picofarads:0.0} pF; by its place in the decades it should add {nominal:0} pF"));
        }
    }

    private static RelayFindingKind Kind(double stray, double? nominal, CalibrationSolverOptions options)
    {
        var openFits = stray <= options.LargestStrayPicofarads;
        var closedFits = nominal is not { } value
            ? !openFits
            : stray - (value * (1 - Tolerance)) > 0 && stray - (value * (1 + Tolerance)) <= options.LargestStrayPicofarads;
        return (openFits, closedFits) switch
        {
            (true, false) => RelayFindingKind.StuckOpen,
            (false, true) => RelayFindingKind.StuckClosed,
            _ => RelayFindingKind.DoesNotSwitch,
        };
    }

    private static string Evidence(CalibratedValue relay, CalibratedValue stray) => string.Create(CultureInfo.InvariantCulture,
        $"closing it adds {relay.Picofarads:0.0} pF; the fixture with all relays open measures {stray.Picofarads:0.0} pF");
}
