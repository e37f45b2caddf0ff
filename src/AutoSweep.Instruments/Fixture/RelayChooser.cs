using AutoSweep.Core.Quantities;

namespace AutoSweep.Instruments.Fixture;

/// <summary>Finds, out of all combinations of relays, the calibrated one nearest to a wanted capacitance.</summary>
/// <remarks>
/// Among the equally near ones it takes the one that moves the fewest relays, and among those the one with the lower total, then
/// the lower relay numbers, so that the same request gives the same relays. All sums are made and sorted once: 65,536 for 16 relays.
/// </remarks>
public sealed class RelayChooser
{
    private readonly long[] _sums;
    private readonly uint[] _masks;

    /// <summary>A chooser for a calibrated fixture.</summary>
    /// <param name="stray">What the open fixture measures.</param>
    /// <param name="relays">What each relay adds, relay 1 first; 1 to 20 of them.</param>
    public RelayChooser(Capacitance stray, IReadOnlyList<Capacitance> relays)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(relays.Count, 20);
        _sums = AllSums(stray, relays);
        _masks = [.. Enumerable.Range(0, _sums.Length).Select(mask => (uint)mask)];
        Array.Sort(_sums, _masks);
    }

    /// <summary>The smallest total: every relay open.</summary>
    public Capacitance Smallest => new(_sums[0]);

    /// <summary>The largest total: every relay closed.</summary>
    public Capacitance Largest => new(_sums[^1]);

    /// <summary>The nearest combination.</summary>
    /// <param name="wanted">The wanted calibrated total; beyond the ends the end is the nearest.</param>
    /// <param name="present">The relays that are closed now.</param>
    public RelayChoice Choose(Capacitance wanted, RelaySet present)
    {
        var above = FirstNotBelow(wanted.Picofarads);
        var distance = Math.Min(Distance(above, wanted), Distance(above - 1, wanted));
        return At(wanted.Picofarads - distance)
            .Concat(distance == 0 ? [] : At(wanted.Picofarads + distance))
            .OrderBy(choice => choice.Closed.OperationsTo(present))
            .ThenBy(choice => choice.Total)
            .ThenBy(choice => choice.Closed.Mask)
            .First();
    }

    // Each sum is that of the combination without its lowest relay, plus that relay.
    private static long[] AllSums(Capacitance stray, IReadOnlyList<Capacitance> relays)
    {
        var sums = new long[1 << relays.Count];
        sums[0] = stray.Picofarads;
        for (var mask = 1; mask < sums.Length; mask++)
            sums[mask] = sums[mask & (mask - 1)] + relays[int.TrailingZeroCount(mask)].Picofarads;
        return sums;
    }

    private long Distance(int index, Capacitance wanted) =>
        index >= 0 && index < _sums.Length ? Math.Abs(_sums[index] - wanted.Picofarads) : long.MaxValue;

    private IEnumerable<RelayChoice> At(long sum)
    {
        for (var index = FirstNotBelow(sum); index < _sums.Length && _sums[index] == sum; index++)
            yield return new(new(_masks[index]), new(sum));
    }

    private int FirstNotBelow(long sum)
    {
        var (low, high) = (0, _sums.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _sums[middle] < sum ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
