using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Calibration;

/// <summary>All readings of one set of relays.</summary>
internal sealed record CalibrationSet(uint Closed, int Count, double Mean, double Variance, double? Dissipation, double DissipationVariance)
{
    /// <summary>Whether a relay, from 0, is told to be closed.</summary>
    public bool Holds(int relay) => ((Closed >> relay) & 1) != 0;

    /// <summary>The same readings, taken for those of the set without a relay.</summary>
    public CalibrationSet Without(int relay) => this with { Closed = Closed & ~(1u << relay) };

    /// <summary>Gathers readings by set, in the order of their first reading.</summary>
    public static IReadOnlyList<CalibrationSet> Gather(IEnumerable<CalibrationReading> readings) =>
        [.. readings.GroupBy(reading => reading.Closed).Select(Of)];

    private static CalibrationSet Of(IGrouping<uint, CalibrationReading> group)
    {
        var values = group.Select(reading => reading.Picofarads).ToArray();
        double[] losses = group.All(reading => reading.Dissipation is not null)
            ? [.. group.Select(reading => reading.Dissipation!.Value)]
            : [];
        return new(
            group.Key, values.Length, values.Mean(), values.Length > 1 ? values.Variance() : double.NaN,
            losses.Length > 0 ? losses.Mean() : null, losses.Length > 1 ? losses.Variance() : double.NaN);
    }
}
