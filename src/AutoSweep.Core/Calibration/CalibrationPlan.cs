namespace AutoSweep.Core.Calibration;

/// <summary>Which sets of relays are read, in order: open, each relay alone, the decades, random combinations, with the open fixture
/// again and again between them.</summary>
/// <remarks>
/// Each relay alone tells its value; the decades and the combinations tell it once more and show whether values add up. The noise of a
/// capacitance meter grows with the value, so that a small relay is seen only beside others of its size.
/// </remarks>
public static class CalibrationPlan
{
    /// <summary>The sets of a plan; bit 0 is relay 1.</summary>
    /// <param name="relays">How many relays the fixture has, 1 to 32.</param>
    /// <param name="options">How much is read.</param>
    public static IReadOnlyList<uint> Sets(int relays, CalibrationPlanOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(relays, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(relays, 32);
        uint[] closed =
        [
            .. Enumerable.Range(0, relays).Select(relay => 1u << relay),
            .. Enumerable.Range(0, relays).Chunk(options.RelaysPerDecade).SelectMany(decade => Decade(decade, options)),
            .. Random(relays, options),
        ];
        return [0, .. closed.Distinct().Chunk(options.OpenEvery).SelectMany(chunk => (uint[])[.. chunk, 0])];
    }

    private static IEnumerable<uint> Decade(int[] relays, CalibrationPlanOptions options)
    {
        if (options.Pairs)
        {
            foreach (var (index, first) in relays.Index())
                foreach (var second in relays.Skip(index + 1))
                    yield return (1u << first) | (1u << second);
        }

        yield return relays.Aggregate(0u, (set, relay) => set | (1u << relay));
    }

    private static IEnumerable<uint> Random(int relays, CalibrationPlanOptions options)
    {
        var random = new Random(options.Seed);
        var all = relays == 32 ? uint.MaxValue : (1u << relays) - 1;
        for (var set = 0; set < options.RandomSets; set++)
            yield return (uint)random.NextInt64(1, (long)all + 1) & all;
    }
}
