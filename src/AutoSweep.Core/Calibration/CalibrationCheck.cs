using System.Numerics;

namespace AutoSweep.Core.Calibration;

/// <summary>Holds a calibration against a few readings of today.</summary>
/// <param name="StrayPicofarads">The calibration's stray.</param>
/// <param name="StrayUncertainty">Its standard uncertainty, in picofarads.</param>
/// <param name="RelaysPicofarads">The calibration's relays, relay 1 first.</param>
/// <param name="RelayUncertainties">Their standard uncertainties, in picofarads.</param>
/// <param name="Meter">The accuracy of today's meter.</param>
public sealed record CalibrationCheck(
    double StrayPicofarads,
    double StrayUncertainty,
    IReadOnlyList<double> RelaysPicofarads,
    IReadOnlyList<double> RelayUncertainties,
    MeterAccuracy Meter)
{
    private const double CoverageFactor = 2;

    /// <summary>The sets that a check reads: open, each decade as a whole, a few random combinations.</summary>
    public static IReadOnlyList<uint> Sets(int relays) =>
    [
        .. CalibrationPlan.Sets(relays, new() { Pairs = false, RandomSets = 4, OpenEvery = 100 })
            .Where(set => BitOperations.PopCount(set) != 1)
            .Distinct(),
    ];

    /// <summary>Compares one set's readings.</summary>
    /// <param name="closed">The relays; bit 0 is relay 1.</param>
    /// <param name="readings">What it measures now, in picofarads; one reading or more.</param>
    public CheckedPoint Compare(uint closed, IReadOnlyList<double> readings)
    {
        var members = RelaysPicofarads.Index().Where(relay => ((closed >> relay.Index) & 1) != 0).ToArray();
        var (expected, measured) = (StrayPicofarads + members.Sum(relay => relay.Item), readings.Average());
        return new(closed, expected, measured, CoverageFactor * Math.Sqrt(
            Math.Pow(CalibratedUncertainty(members.Select(relay => relay.Index)), 2)
            + Math.Pow(measured * Meter.GainStandardUncertainty, 2)
            + Math.Pow(Meter.OffsetStandardUncertainty, 2)
            + (readings.Count > 1 ? readings.Sum(one => (one - measured) * (one - measured)) / (readings.Count - 1) / readings.Count : 0)));
    }

    // Most of a relay's uncertainty is the calibrating meter's gain, common to all: they add as they are, not as squares.
    private double CalibratedUncertainty(IEnumerable<int> members) => StrayUncertainty + members.Sum(relay => RelayUncertainties[relay]);
}
