using AutoSweep.Core.Fitting;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.ByHand;
using MathNet.Numerics.Statistics;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Bench;

/// <summary>Takes settled levels: waits for the detector, averages samples, and notices when they still move.</summary>
/// <param name="bench">The connected bench.</param>
/// <param name="options">How a reading is taken.</param>
/// <param name="clock">The bench's clock.</param>
/// <param name="log">Where retakes are told.</param>
public sealed class LevelReader(ConnectedBench bench, LevelReaderOptions options, TimeProvider clock, ILogger<LevelReader> log)
{
    private NoiseRecord _noise = NoiseRecord.Start;
    private double _toneHertz = 50;

    /// <summary>Chooses range and detector bandwidth for a tone.</summary>
    /// <param name="largest">The largest level to expect at the terminal.</param>
    /// <param name="tone">The tone, or the lowest that may come.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    public Task PrepareAsync(Level largest, Frequency tone, CancellationToken cancellationToken)
    {
        _toneHertz = tone.Hertz;
        return bench.Meter.PrepareLevelAsync(largest.Volts * bench.AmplifierGain, tone.Hertz, cancellationToken);
    }

    /// <summary>Waits until the detector has settled after a change just made, then reads.</summary>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <param name="samples">How many samples to average; the options' number when not given.</param>
    /// <param name="span">Over how long to spread them; the options' span when not given.</param>
    public async Task<LevelSample> ReadAsync(CancellationToken cancellationToken, int? samples = null, TimeSpan? span = null)
    {
        if (bench.Meter is IEyeReadMeter)
            return (await ReadOrTakeBackAsync(canTakeBack: false, cancellationToken))!;
        double[]? before = null;
        for (var take = 0; ; take++)
        {
            await Task.Delay(bench.Settling, clock, cancellationToken);
            var taken = await SampleAsync(samples ?? options.Samples, span ?? options.Span, cancellationToken);
            var settled = IsSettled(taken) || (before is not null && IsOnlyUnsteady(before, taken));
            if (settled || take == options.Retakes)
                return Reading(taken, settled);
            log.LogInformation(
                "Level still moves ({First:G5} to {Last:G5} V): waiting {Settling} and reading again", taken[0], taken[^1], bench.Settling);
            before = taken;
        }
    }

    /// <summary>Reads, where a person who types may take the level before back instead.</summary>
    /// <param name="canTakeBack">Whether there is one.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>None when the person did; a meter with a port always gives a level.</returns>
    public async Task<LevelSample?> ReadOrTakeBackAsync(bool canTakeBack, CancellationToken cancellationToken)
    {
        if (bench.Meter is not IEyeReadMeter eye)
            return await ReadAsync(cancellationToken);
        return await eye.AskAsync(canTakeBack, cancellationToken) is { } typed ? ReadByEye(eye, typed) : null;
    }

    /// <summary>What the next level at the terminal should be about; noticed only where a person types it.</summary>
    /// <param name="level">The level; none where nothing is known.</param>
    /// <param name="factor">How many times more or less is still plausible.</param>
    /// <param name="because">Where that comes from.</param>
    public void Expect(Level? level, double factor, string because)
    {
        if (bench.Meter is IEyeReadMeter eye)
            eye.Expected = level is { Volts: > 0 } about ? new(about.Volts * bench.AmplifierGain, factor, because) : null;
    }

    // An eye waits until the digits stand still, and reads once: its last digit and its flicker are all that is known of the noise.
    private LevelSample ReadByEye(IEyeReadMeter eye, TypedLevel typed)
    {
        var level = typed.Volts / bench.AmplifierGain;
        var noise = eye.RelativeNoise(typed);
        return new(new(level), new(noise * level), noise, 1, Settled: true) { RelativeUncertainty = Uncertainty(level, noise) };
    }

    /// <summary>Looks for a swing of the level at a known rate, in a series that the meter spaces evenly; the detector's evening-out is taken
    /// out.</summary>
    /// <param name="hertz">The rate.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>None where the meter takes no series, or the series cannot tell.</returns>
    public async Task<SwingFit?> ReadSwingAsync(double hertz, CancellationToken cancellationToken)
    {
        if (await bench.Meter.ReadBurstAsync(cancellationToken) is not { } burst || SwingFit.Of(burst.Volts, burst.Interval, hertz, SamplerSpread) is not { } fit)
            return null;
        var passed = burst.Passes(fit.Hertz);
        return fit with { Mean = fit.Mean / bench.AmplifierGain, Depth = fit.Depth / passed, DepthUncertainty = fit.DepthUncertainty / passed };
    }

    // How far a meter's own sample clock may be off what its driver says (an estimate: trigger latencies are hardly published).
    private const double SamplerSpread = 0.01;

    private async Task<double[]> SampleAsync(int wanted, TimeSpan span, CancellationToken cancellationToken)
    {
        List<double> samples = [];
        var last = clock.GetTimestamp() - (long)(span.TotalSeconds * clock.TimestampFrequency);
        for (var tries = 0; samples.Count < wanted; tries++)
        {
            var left = (span / (wanted - 1)) - clock.GetElapsedTime(last);
            if (left > TimeSpan.Zero)
                await Task.Delay(left, clock, cancellationToken);
            last = clock.GetTimestamp();
            var reading = await bench.Meter.ReadLevelAsync(cancellationToken);
            if (reading.Kind == MeterReadingKind.Value)
            {
                samples.Add(reading.Value / bench.AmplifierGain);
                continue;
            }

            if (tries >= wanted + 4) // a range for each decade from 100 mV to 100 V
                throw bench.MeterFault($"{reading.Kind} ('{reading.Raw}') again and again", "a level in volts");
            samples.Clear();
            await WidenAsync(reading, cancellationToken);
        }

        return [.. samples];
    }

    // Overload: the next range up holds ten times as much.
    private async Task WidenAsync(MeterReading reading, CancellationToken cancellationToken)
    {
        log.LogWarning("Meter gave {Kind} ('{Raw}') in its {Range} V range", reading.Kind, reading.Raw, bench.Meter.RangeVolts);
        if (reading.Kind == MeterReadingKind.Overload)
            await bench.Meter.PrepareLevelAsync(2 * bench.Meter.RangeVolts, _toneHertz, cancellationToken);
        await Task.Delay(bench.Settling, clock, cancellationToken);
    }

    private bool IsSettled(double[] samples)
    {
        var trend = Math.Abs(samples[^1] - samples[0]);
        return trend <= options.TrendSigmas * Math.Sqrt(2) * SampleSd(samples.Mean());
    }

    // A wheel that wobbles never stands still, but its mean does: two takes in a row then agree within their own spread,
    // which a detector on its way to a new level does not.
    private static bool IsOnlyUnsteady(double[] before, double[] now)
    {
        var spread = Math.Sqrt((before.Variance() / before.Length) + (now.Variance() / now.Length));
        return Math.Abs(now.Mean() - before.Mean()) <= 2 * spread;
    }

    private LevelSample Reading(double[] samples, bool settled)
    {
        var mean = samples.Mean();
        var sd = samples.StandardDeviation();
        if (settled && mean > 0)
            _noise = _noise.With(sd / mean, samples.Length);
        var relative = SampleSd(mean) / Math.Sqrt(samples.Length) / Math.Max(mean, double.Epsilon);
        return new(new(mean), new(sd), Math.Max(relative, 1e-6), samples.Length, settled) { RelativeUncertainty = Uncertainty(mean, relative) };
    }

    private double? Uncertainty(double mean, double relativeNoise) => mean > 0 && bench.Meter.UncertaintyVolts(mean * bench.AmplifierGain) is { } meter
        ? Math.Sqrt((relativeNoise * relativeNoise) + Math.Pow(meter / (mean * bench.AmplifierGain), 2))
        : null;

    private double SampleSd(double level) => Math.Sqrt(
        Math.Pow(level * Math.Max(_noise.RelativeSd, options.NoiseFloor), 2)
        + Math.Pow(options.NoiseShareOfRange * bench.Meter.RangeVolts / bench.AmplifierGain, 2));
}
