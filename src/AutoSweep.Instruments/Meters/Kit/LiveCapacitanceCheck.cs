using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>Checks a capacitance driver against a meter that is there, with a capacitor on its clips.</summary>
public static class LiveCapacitanceCheck
{
    private const int Readings = 10;

    /// <summary>Runs the whole check.</summary>
    /// <param name="session">A session with the meter; closed at the end.</param>
    /// <param name="driver">The driver.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands and odd answers.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <exception cref="BenchFaultException">No answer, another identity, a required command is refused, or the link breaks.</exception>
    public static async Task<IReadOnlyList<LiveCheckRow>> RunAsync(
        ScpiSession session, MeterDriver driver, TimeProvider time, ILogger log, CancellationToken cancellationToken)
    {
        await using var meter = await ScpiCapacitanceMeter.OpenAsync(session, driver, Capacitance.Zero, time, log, cancellationToken);
        List<LiveCheckRow> rows = [LiveCommonChecks.Identity(meter.Identity, driver), LiveCommonChecks.Refused(meter.Refused)];
        List<CapacitanceReading> readings = [];
        for (var count = 0; count < Readings; count++)
            readings.Add(await meter.ReadAsync(cancellationToken));
        rows.AddRange(Readable(readings, meter));
        rows.Add(await TimeoutAsync(session, driver, meter, readings[^1], cancellationToken));
        rows.Add(await LiveCommonChecks.ErrorQueueAsync(session, driver, cancellationToken));
        return rows;
    }

    private static IEnumerable<LiveCheckRow> Readable(List<CapacitanceReading> readings, ScpiCapacitanceMeter meter)
    {
        var values = readings.Where(reading => reading.Kind == CapacitanceReadingKind.Value).Select(reading => reading.Picofarads).ToArray();
        if (values.Length < Readings)
            return [new("readings", $"{readings[^1].Raw} is {Sessions.SessionOutcome.Of(readings[^1])}", $"{Readings} values", LiveVerdict.Short,
                "put a film capacitor of 10 nF to 1 uF on the clips; with one there, look at reply in driver.json")];
        var (mean, noise) = (values[1..].Average(), LiveLevelCheck.Spread(values[1..]));
        var limit = (meter.Accuracy.ShareOfReading * mean) + meter.Accuracy.OffsetPicofarads;
        return
        [
            LiveCheckRow.Judged("noise", FormattableString.Invariant($"{noise:0.000} pF of {mean:0.000} pF, {values.Length - 1} readings"),
                FormattableString.Invariant($"at most {limit:0.000} pF, the accuracy that the file states"), noise <= limit,
                "a longer measuring time, shorter leads, or another accuracy in driver.json"),
            LiveCheckRow.Judged("settling", FormattableString.Invariant($"the first reading after the set-up is {values[0] - mean:+0.000;-0.000} pF off"),
                FormattableString.Invariant($"at most {limit + (4 * noise):0.000} pF"), Math.Abs(values[0] - mean) <= limit + (4 * noise),
                "a longer capacitance.settleSeconds"),
        ];
    }

    private static async Task<LiveCheckRow> TimeoutAsync(
        ScpiSession session, MeterDriver driver, ScpiCapacitanceMeter meter, CapacitanceReading before, CancellationToken cancellationToken)
    {
        if (await LiveCommonChecks.AnswersTooSoonAsync(session, driver.Capacitance!.Read, cancellationToken))
            return LiveCheckRow.NotChecked("time-out", "the meter answers within 10 ms: none could be brought about");
        var after = await meter.ReadAsync(cancellationToken);
        return LiveCheckRow.Judged("time-out and recovery", $"no answer in 10 ms, then {Sessions.SessionOutcome.Of(after)}",
            $"{Sessions.SessionOutcome.Of(before)} as before, within 1 %",
            after.Kind == before.Kind && !(Math.Abs(after.Picofarads - before.Picofarads) > 0.01 * before.Picofarads),
            "the next reading after a lost one is wrong: look at terminators and queryTimeoutSeconds");
    }
}
