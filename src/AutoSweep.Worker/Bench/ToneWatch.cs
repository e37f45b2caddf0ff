using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Bench;

/// <summary>Looks at the clips until counts agree: a tone, a foreign tone, silence, or nothing that can be made out.</summary>
/// <remarks>Counters miscount a few millivolts, so no single count is ever believed (they are specified from about 10 mV, by their
/// manuals).</remarks>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads a level where the counter says nothing.</param>
/// <param name="record">The job, for its generator.</param>
/// <param name="options">How many counts make a verdict.</param>
/// <param name="log">Every count goes there: what was heard is what is asked first when an output was taken for another.</param>
public sealed class ToneWatch(ConnectedBench bench, LevelReader levels, JobRecord record, ClipWatchOptions options, ILogger<ToneWatch> log)
{
    private readonly ToneRecognition _recognition = new(record.Profile);
    private MainsEstimate _mains = MainsEstimate.Unknown;

    // Whether something sounds at all needs no exact reading: the middle detector bandwidth, which is quick, will do.
    private static Frequency Presence => new(200);

    private bool HasLevel => bench.AmplifierGain >= options.GainForTrust;

    /// <summary>Mains frequency now over its nominal value, as the tones tell.</summary>
    public double MainsRatio => _mains.Ratio;

    /// <summary>Counts until the counts agree or have had their chance.</summary>
    public Task<ToneSight> LookAsync(CancellationToken cancellationToken) =>
        HasLevel ? LookWithLevelAsync(cancellationToken) : LookWithoutLevelAsync(cancellationToken);

    private async Task<ToneSight> LookWithLevelAsync(CancellationToken cancellationToken)
    {
        List<double> run = [];
        var silent = 0;
        for (var count = 0; count < options.CountsBeforeGivingUp; count++)
        {
            var match = await CountAsync(cancellationToken);
            if (match.Kind is ToneMatchKind.Nothing or ToneMatchKind.Hum)
            {
                run.Clear();
                if (++silent == 2)
                    return match.Kind == ToneMatchKind.Hum ? new ToneSight.Silence(true, match.Counted.Hertz) : new ToneSight.Silence(false);
                continue;
            }

            silent = 0;
            Extend(run, match.Counted.Hertz);
            if (await VerdictAsync(run, cancellationToken) is { } sight)
                return sight;
        }

        return new ToneSight.Uncountable();
    }

    // Below its specified level a counter may give nothing or anything although a tone is there: the level tells that something
    // sounds, and what the right counts have in common, which the wrong ones have not, tells what.
    private async Task<ToneSight> LookWithoutLevelAsync(CancellationToken cancellationToken)
    {
        if (!await SoundsAsync(cancellationToken))
            return new ToneSight.Silence(Hum: false);
        return await ListenCloselyAsync(cancellationToken) is { } tone ? tone : new ToneSight.Uncountable();
    }

    /// <summary>Counts many times, for a tone so weak that the counter is right only now and then.</summary>
    /// <returns>The first tone on which enough counts agree; none when no tone has that many.</returns>
    public async Task<ToneSight.Tone?> ListenCloselyAsync(CancellationToken cancellationToken)
    {
        Dictionary<int, List<ToneMatch>> heard = [];
        for (var count = 0; count < options.CloseListening.Counts; count++)
        {
            var match = await CountAsync(cancellationToken);
            if (match.Kind != ToneMatchKind.Tone)
                continue;
            var alike = heard.TryGetValue(match.Output!.Number, out var known) ? known : heard[match.Output.Number] = [];
            alike.Add(match);
            if (alike.Count == options.CloseListening.Agreeing)
                return Believe(alike);
        }

        return null;
    }

    private ToneSight.Tone Believe(List<ToneMatch> alike)
    {
        foreach (var match in alike)
            _mains = _mains.With(match);
        return new(alike[0].Output!.Number, alike.Average(match => match.Counted.Hertz));
    }

    private async Task<ToneMatch> CountAsync(CancellationToken cancellationToken)
    {
        var reading = await bench.Meter.CountFrequencyAsync(cancellationToken);
        var match = Match(reading.Kind == MeterReadingKind.Value ? reading.Value : 0);
        log.LogDebug("Counted {Hertz:0.00} Hz: {Kind}, nearest output {Output}", reading.Value, match.Kind, match.Output?.Number);
        return match;
    }

    private async Task<bool> SoundsAsync(CancellationToken cancellationToken)
    {
        await levels.PrepareAsync(LargestLevel, Presence, cancellationToken);
        var level = (await levels.ReadAsync(cancellationToken)).Mean;
        log.LogDebug("Level at the clips {Level}", level);
        return level > options.Present;
    }

    private void Extend(List<double> run, double hertz)
    {
        if (run.Count > 0 && Math.Abs(hertz - run[^1]) > options.Agreement * hertz)
            run.Clear();
        run.Add(hertz);
    }

    private async Task<ToneSight?> VerdictAsync(List<double> run, CancellationToken cancellationToken)
    {
        var match = Match(run.Average());
        if (match.Kind == ToneMatchKind.OffTone)
            return run.Count >= options.CountsOfForeign ? new ToneSight.Foreign(match.Counted.Hertz) : null;
        if (run.Count < options.CountsWithLevel)
            return null;
        if (match.Kind == ToneMatchKind.HumOrTone && !await SoundsAsync(cancellationToken))
            return new ToneSight.Silence(Hum: true, match.Counted.Hertz);
        _mains = _mains.With(match);
        return new ToneSight.Tone(match.Output!.Number, match.Counted.Hertz);
    }

    private ToneMatch Match(double hertz) => _recognition.Match(new(hertz), _mains);

    /// <summary>The largest level that an output may give at its terminal: twice the strongest usual one (15 mV, trade figures).</summary>
    public static Level LargestLevel => Level.FromMillivolts(30);
}
