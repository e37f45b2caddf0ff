using AutoSweep.Core.Calibration;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Calibration;

/// <summary>Reads sets of relays one after the other; a set can be taken back.</summary>
/// <param name="reader">What reads a set.</param>
public sealed class RelaySetRun(IRelaySetReader reader)
{
    /// <summary>Told after each set: how many of them are done.</summary>
    public event Action<int>? Done;

    /// <summary>Reads all sets.</summary>
    /// <param name="sets">The sets in their order; bit 0 is relay 1.</param>
    /// <param name="repeats">How often each is read.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>The readings of each set, in order.</returns>
    public async Task<IReadOnlyList<IReadOnlyList<CalibrationReading>>> ReadAsync(
        IReadOnlyList<uint> sets, int repeats, CancellationToken cancellationToken)
    {
        List<IReadOnlyList<CalibrationReading>> read = [];
        while (read.Count < sets.Count)
        {
            if (await reader.ReadAsync(new RelaySet(sets[read.Count]), repeats, cancellationToken) is { } readings)
                read.Add(readings);
            else if (read.Count > 0)
                read.RemoveAt(read.Count - 1);
            Done?.Invoke(read.Count);
        }

        return read;
    }
}
