using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>Looks at the clips until counts agree: a tone, a foreign tone, silence, or nothing that can be made out.</summary>
/// <remarks>Counters miscount a few millivolts, so no single count is ever believed (handbook, Physics 8; the 10 mV limit is from meter specifications).</remarks>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads a level where the counter says nothing.</param>
/// <param name="record">The job, for its generator.</param>
/// <param name="options">How many counts make a verdict.</param>
public sealed class ToneWatch(ConnectedBench bench, LevelReader levels, JobRecord record, ClipWatchOptions options)
{
    private readonly ToneRecognition _recognition = new(record.Profile);
    private MainsEstimate _mains = MainsEstimate.Unknown;

    // Whether something sounds at all needs no exact reading: the middle detector bandwidth, which is quick, will do.
    private static Frequency Presence => new(200);

    private bool HasLevel => bench.AmplifierGain >= options.GainForTrust;

    /// <summary>Mains frequency now over its nominal value, as the tones tell.</summary>
    public double MainsRatio => _mains.Ratio;

    /// <summary>Counts until the counts agree or have had their chance.</summary>
    public async Task<ToneSight> LookAsync(CancellationToken cancellationToken)
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
                    return await BehindSilenceAsync(match.Kind == ToneMatchKind.Hum, cancellationToken);
                continue;
            }

            silent = 0;
            Extend(run, match.Counted.Hertz);
            if (await VerdictAsync(run, cancellationToken) is { } sight)
                return sight;
        }

        return new ToneSight.Uncountable();
    }

    /// <summary>Counts many times, for a tone so weak that the counter is right only now and then.</summary>
    /// <returns>The tone on which enough counts agree; none when no tone has that many.</returns>
    public async Task<ToneSight.Tone?> ListenCloselyAsync(CancellationToken cancellationToken)
    {
        List<ToneMatch> heard = [];
        for (var count = 0; count < options.CloseListening.Counts; count++)
            heard.Add(await CountAsync(cancellationToken));
        var best = heard.Where(match => match.Kind == ToneMatchKind.Tone).GroupBy(match => match.Output!.Number).MaxBy(group => group.Count());
        return best?.Count() >= options.CloseListening.Agreeing ? new(best.Key, best.Average(match => match.Counted.Hertz)) : null;
    }

    private async Task<ToneMatch> CountAsync(CancellationToken cancellationToken)
    {
        var reading = await bench.Meter.CountFrequencyAsync(cancellationToken);
        return Match(reading.Kind == MeterReadingKind.Value ? reading.Value : 0);
    }

    // Below its specified level a counter may give nothing although a tone is there: the level tells.
    private async Task<ToneSight> BehindSilenceAsync(bool hum, CancellationToken cancellationToken) =>
        !HasLevel && await SoundsAsync(cancellationToken) ? new ToneSight.Uncountable() : new ToneSight.Silence(hum);

    private async Task<bool> SoundsAsync(CancellationToken cancellationToken)
    {
        await levels.PrepareAsync(LargestLevel, Presence, cancellationToken);
        return (await levels.ReadAsync(cancellationToken)).Mean > options.Present;
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
        if (run.Count < (HasLevel ? options.CountsWithLevel : options.CountsWithoutLevel))
            return null;
        if (match.Kind == ToneMatchKind.HumOrTone && !await SoundsAsync(cancellationToken))
            return new ToneSight.Silence(Hum: true);
        _mains = _mains.With(match);
        return new ToneSight.Tone(match.Output!.Number, match.Counted.Hertz);
    }

    private ToneMatch Match(double hertz) => _recognition.Match(new(hertz), _mains);

    /// <summary>The largest level that an output may give at its terminal: twice the strongest usual one (15 mV, trade figures).</summary>
    public static Level LargestLevel => Level.FromMillivolts(30);
}
