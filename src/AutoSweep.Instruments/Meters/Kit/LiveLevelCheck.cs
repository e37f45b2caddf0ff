using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>Checks a level driver against a meter that is there, with a steady tone at its input.</summary>
/// <remarks>Every number that is compared is read from the meter; what it is compared with stands in the driver file.</remarks>
public sealed class LiveLevelCheck
{
    // Median and scatter of ten readings: a few seconds on any bench, the scatter known to a quarter (common practice).
    private const int Readings = 10;

    // The noise up to which the peak search was studied (docs/peak-search.md).
    private const double MostNoiseShare = 0.01;

    // A tenth of a semitone: far closer than two tones of a generator, far wider than a sound counter's error.
    private const double ToneTolerance = 0.005;

    private readonly ScpiLevelMeter _meter;
    private readonly MeterDriver _driver;
    private readonly ScpiSession _session;
    private readonly TimeProvider _time;
    private readonly double? _toneHertz;
    private readonly List<LiveCheckRow> _rows = [];

    private LiveLevelCheck(ScpiLevelMeter meter, MeterDriver driver, ScpiSession session, double? toneHertz, TimeProvider time) =>
        (_meter, _driver, _session, _toneHertz, _time) = (meter, driver, session, toneHertz, time);

    // Where no tone is named, one in the middle of a keyboard chooses the bandwidth.
    private double Tone => _toneHertz ?? 1000;

    /// <summary>Runs the whole check.</summary>
    /// <param name="session">A session with the meter; closed at the end.</param>
    /// <param name="driver">The driver.</param>
    /// <param name="toneHertz">The tone at the input in hertz, where it is known.</param>
    /// <param name="time">The clock behind every wait.</param>
    /// <param name="log">Takes refused commands and odd answers.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <exception cref="BenchFaultException">No answer, another identity, a required command is refused, or the link breaks.</exception>
    public static async Task<IReadOnlyList<LiveCheckRow>> RunAsync(
        ScpiSession session, MeterDriver driver, double? toneHertz, TimeProvider time, ILogger log, CancellationToken cancellationToken)
    {
        await using var meter = await ScpiLevelMeter.OpenAsync(session, driver, time, log, cancellationToken);
        var check = new LiveLevelCheck(meter, driver, session, toneHertz, time);
        check._rows.Add(LiveCommonChecks.Identity(meter.Identity, driver));
        await check.InputAsync(cancellationToken);
        check._rows.Insert(1, LiveCommonChecks.Refused(meter.Refused));
        return check._rows;
    }

    private async Task InputAsync(CancellationToken cancellationToken)
    {
        var level = _driver.Level!;
        await _meter.PrepareLevelAsync(level.RangesVolts[^1], Tone, cancellationToken);
        var first = await _meter.ReadLevelAsync(cancellationToken);
        if (first.Kind != MeterReadingKind.Value)
            _rows.Add(new("range", SaidOf(first), "a level in the largest range", LiveVerdict.Short, "look at the reply's fields and at read in driver.json"));
        else
            await LevelAsync(first.Value, cancellationToken);
        await FrequencyAsync(cancellationToken);
        _rows.Add(await LiveCommonChecks.ErrorQueueAsync(_session, _driver, cancellationToken));
    }

    private async Task LevelAsync(double about, CancellationToken cancellationToken)
    {
        var readings = await RangesAsync(about, cancellationToken);
        var noise = Spread(readings);
        var mean = readings.Average();
        _rows.Add(LiveCheckRow.Judged("noise of the input",
            FormattableString.Invariant($"{Share(noise, mean):0.000} % of {mean:0.000000} V, {readings.Length} readings"),
            FormattableString.Invariant($"at most {100 * MostNoiseShare:0.#} %"), noise <= MostNoiseShare * mean,
            "put a steady tone of 10 mV or more at the input; with one there, look at bandwidth and range"));
        foreach (var bandwidth in _driver.Level!.Bandwidths.Where(bandwidth => bandwidth.FromToneHertz <= Tone))
            _rows.Add(await new LiveSettling(_meter, _driver, _time).MeasureAsync(bandwidth, mean, cancellationToken));
        await _meter.PrepareLevelAsync(about, Tone, cancellationToken);
        _rows.Add(await TimeoutAsync(mean, Math.Max(10 * noise, 0.05 * mean), cancellationToken));
    }

    // The range that holds the level and the next one up must tell the same; one that is too small must say so.
    private async Task<double[]> RangesAsync(double about, CancellationToken cancellationToken)
    {
        var readings = await ReadAsync(about, cancellationToken);
        var (range, noise) = (_meter.RangeVolts, Spread(readings));
        var limit = Limit(readings.Average());
        if (_driver.Level!.RangesVolts.FirstOrDefault(wider => wider > range) is > 0 and var wider)
        {
            var other = await ReadAsync(wider, cancellationToken);
            var difference = Math.Abs(other.Average() - readings.Average());
            var allowed = limit + Limit(other.Average()) + (4 * (noise + Spread(other)) / Math.Sqrt(Readings));
            _rows.Add(limit is null
                ? LiveCheckRow.NotChecked("range", "the driver states no accuracy to compare with", FormattableString.Invariant($"{range} and {wider} V differ by {difference:0.000000} V"))
                : LiveCheckRow.Judged("range", FormattableString.Invariant($"{range} and {wider} V differ by {difference:0.000000} V"),
                    FormattableString.Invariant($"at most {allowed:0.000000} V, both limits and the noise"), difference <= allowed,
                    "look at the range command's argument, and at accuracy in driver.json"));
        }

        await OverloadAsync(readings.Average(), cancellationToken);
        return readings;
    }

    private async Task OverloadAsync(double volts, CancellationToken cancellationToken)
    {
        var level = _driver.Level!;
        if (volts <= 1.05 * level.RangesVolts[0] * level.OverRange)
        {
            _rows.Add(LiveCheckRow.NotChecked("overload", FormattableString.Invariant(
                $"it takes an input above {level.RangesVolts[0] * level.OverRange:0.###} V, the smallest range's end")));
            return;
        }

        await _meter.PrepareLevelAsync(0, Tone, cancellationToken);
        var reading = await _meter.ReadLevelAsync(cancellationToken);
        _rows.Add(LiveCheckRow.Judged("overload", $"{reading.Raw} is {SaidOf(reading)}",
            FormattableString.Invariant($"overload in the {level.RangesVolts[0]} V range"), reading.Kind == MeterReadingKind.Overload,
            "add the reply to reply.overloads, or correct overRange"));
    }

    private async Task FrequencyAsync(CancellationToken cancellationToken)
    {
        if (_driver.Frequency is null || _toneHertz is not { } tone)
        {
            _rows.Add(LiveCheckRow.NotChecked("frequency", _driver.Frequency is null ? "the driver counts none" : "give the tone at the input: --tone HZ"));
            return;
        }

        List<double> counts = [];
        for (var count = 0; count < 3; count++)
            counts.Add((await _meter.CountFrequencyAsync(cancellationToken)).Value);
        var middle = counts.Order().ElementAt(1);
        _rows.Add(LiveCheckRow.Judged("frequency", FormattableString.Invariant($"{middle:0.00} Hz, the middle one of 3"),
            FormattableString.Invariant($"{tone} Hz within {100 * ToneTolerance:0.#} %"), Math.Abs(middle - tone) <= ToneTolerance * tone,
            "counters need about 10 mV; look at the counter's range, or at what the tone really is"));
    }

    // A reading is asked for with far too little time; what comes late must not be taken for the next answer.
    private async Task<LiveCheckRow> TimeoutAsync(double volts, double allowed, CancellationToken cancellationToken)
    {
        if (await LiveCommonChecks.AnswersTooSoonAsync(_session, _driver.Level!.Read, cancellationToken))
            return LiveCheckRow.NotChecked("time-out", "the meter answers within 10 ms: none could be brought about");
        var began = _time.GetTimestamp();
        var reading = await _meter.ReadLevelAsync(cancellationToken);
        return LiveCheckRow.Judged("time-out and recovery",
            FormattableString.Invariant($"no answer in 10 ms, then {SaidOf(reading)}, back after {_time.GetElapsedTime(began).TotalSeconds:0.00} s"),
            FormattableString.Invariant($"{volts:0.000000} V as before, within {allowed:0.000000} V"),
            reading.Kind == MeterReadingKind.Value && Math.Abs(reading.Value - volts) <= allowed,
            "the next reading after a lost one is wrong: look at terminators and queryTimeoutSeconds");
    }

    private async Task<double[]> ReadAsync(double largestVolts, CancellationToken cancellationToken)
    {
        await _meter.PrepareLevelAsync(largestVolts, Tone, cancellationToken);
        List<double> values = [];
        for (var reading = 0; reading < Readings; reading++)
            if (await _meter.ReadLevelAsync(cancellationToken) is { Kind: MeterReadingKind.Value } value)
                values.Add(value.Value);
        return values.Count == 0 ? [double.NaN] : [.. values];
    }

    private double? Limit(double volts) => Math.Sqrt(3) * _meter.UncertaintyVolts(volts);

    private static double Share(double part, double whole) => whole == 0 ? 0 : 100 * part / whole;

    private static string SaidOf(MeterReading reading) =>
        reading.Kind == MeterReadingKind.Value ? FormattableString.Invariant($"{reading.Value:0.000000} V") : Sessions.SessionOutcome.Of(reading);

    /// <summary>The standard deviation of a sample.</summary>
    internal static double Spread(IReadOnlyCollection<double> values)
    {
        var mean = values.Average();
        return values.Count < 2 ? 0 : Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
    }
}
