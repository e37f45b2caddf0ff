using AutoSweep.Core.Calibration;
using Spectre.Console;

namespace AutoSweep.Worker.Calibration;

/// <summary>Reads sets of relays with a bar that shows how far it is; typed values show it in their own questions.</summary>
public static class RelaySetProgress
{
    /// <summary>Reads all sets.</summary>
    /// <returns>The readings of each set, in order.</returns>
    public static async Task<IReadOnlyList<IReadOnlyList<CalibrationReading>>> ReadAsync(
        FixtureBench bench, IReadOnlyList<uint> sets, int repeats, CancellationToken cancellationToken)
    {
        var run = new RelaySetRun(bench.Reader);
        if (bench.IsTyped)
            return await run.ReadAsync(sets, repeats, cancellationToken);
        return await AnsiConsole.Progress().StartAsync(async context =>
        {
            var bar = context.AddTask($"Reading {sets.Count} sets of relays", maxValue: sets.Count);
            run.Done += done => bar.Value = done;
            return await run.ReadAsync(sets, repeats, cancellationToken);
        });
    }
}
