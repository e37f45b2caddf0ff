using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>Records the session that a driver needs, from a meter that is there: everything that the driver does, once.</summary>
public static class DriverRecording
{
    /// <summary>Records a session.</summary>
    /// <param name="driver">The driver.</param>
    /// <param name="link">The open link to the meter; closed at the end.</param>
    /// <param name="capacitance">Whether it is to measure a capacitance rather than a level.</param>
    /// <param name="toneHertz">The tone at the input, for a level.</param>
    /// <param name="exchange">Time-outs instead of the driver's, or null.</param>
    /// <param name="time">The clock behind every wait and the date.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>The text of the session file.</returns>
    /// <exception cref="BenchFaultException">The meter is in trouble.</exception>
    public static async Task<string> RecordAsync(
        MeterDriver driver, ILink link, bool capacitance, double toneHertz, ExchangeOptions? exchange, TimeProvider time,
        CancellationToken cancellationToken)
    {
        var kept = new RecordingLink(link);
        var session = new ScpiSession(kept, MeterSessionOptions.Of(driver, exchange), time,
            Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance);
        await using var owned = session;
        await using var player = new SessionPlayer(driver, _ => session, time);
        var recorder = new SessionRecorder(player, kept);
        recorder.Remark("A conversation with a meter that was there.");
        recorder.Remark(string.Create(CultureInfo.InvariantCulture,
            $"Source: recorded over {link.Resource} on {time.GetUtcNow():yyyy-MM-dd}; the meter's own identity stands below."));
        await recorder.RecordAsync((capacitance ? "open capacitance" : "open") + (link.Resource is SerialResource ? " serial" : ""), cancellationToken);
        await (capacitance ? CapacitanceAsync(recorder, cancellationToken) : LevelAsync(recorder, driver, toneHertz, cancellationToken));
        if (driver.Display is not null)
            await recorder.RecordAsync("show AUTOSWEEP", cancellationToken);
        if (driver.Beep is not null)
            await recorder.RecordAsync("beep", cancellationToken);
        await recorder.RecordAsync("close", cancellationToken);
        return recorder.Text;
    }

    private static async Task LevelAsync(SessionRecorder recorder, MeterDriver driver, double toneHertz, CancellationToken cancellationToken)
    {
        var level = driver.Level!;
        await PrepareAsync(recorder, level.RangesVolts[^1], toneHertz, cancellationToken);
        var volts = Number(await recorder.RecordAsync("read", cancellationToken));
        await PrepareAsync(recorder, volts ?? 0, toneHertz, cancellationToken);
        await recorder.RecordAsync("read", cancellationToken);
        if (level.Burst is not null)
            await recorder.RecordAsync("series", cancellationToken);
        if (driver.Frequency is not null)
            await recorder.RecordAsync("count", cancellationToken);
        if (volts > level.RangesVolts[0] * level.OverRange)
        {
            await PrepareAsync(recorder, 0, toneHertz, cancellationToken);
            await recorder.RecordAsync("read", cancellationToken);
        }
        else
            recorder.Remark(string.Create(CultureInfo.InvariantCulture,
                $"No overload here: it takes an input above {level.RangesVolts[0] * level.OverRange} V."));
    }

    private static async Task CapacitanceAsync(SessionRecorder recorder, CancellationToken cancellationToken)
    {
        await recorder.RecordAsync("measure", cancellationToken);
        await recorder.RecordAsync("measure", cancellationToken);
    }

    private static Task<string?> PrepareAsync(SessionRecorder recorder, double volts, double hertz, CancellationToken cancellationToken) =>
        recorder.RecordAsync(string.Create(CultureInfo.InvariantCulture, $"prepare {volts} {hertz}"), cancellationToken);

    private static double? Number(string? outcome) =>
        outcome is not null && outcome.StartsWith("value ", StringComparison.Ordinal)
        && double.TryParse(outcome[6..], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}
