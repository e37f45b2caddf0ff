using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>The sweep: the peaking capacitance of every filtered output, in whatever order they are clipped.</summary>
/// <param name="bench">The bench.</param>
/// <param name="clips">Tells what is clipped.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="signals">The sounds.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class SweepStage(
    ConnectedBench bench,
    IClipSource clips,
    LevelReader levels,
    JobRecord record,
    BenchBoard board,
    BenchSignals signals,
    TimeProvider clock) : IBenchStage
{
    private long? _boxOffset;

    /// <inheritdoc/>
    public JobStage Stage => JobStage.Sweep;

    /// <inheritdoc/>
    public IReadOnlyList<int> Plan => [.. record.Profile.FilteredOutputs.Select(output => output.Number)];

    /// <summary>The fixture rests where the next output is expected to peak, so that its tone is loud when the clip lands.</summary>
    public async Task RestAsync(CancellationToken cancellationToken)
    {
        // Between outputs nobody dials for nothing.
        if (bench.Dialled is not null)
            return;
        if (Next() is { } next)
            await bench.Fixture.SetAsync(Within(SweepPriors.For(next, record.State).Expected), cancellationToken);
        else
            await bench.Fixture.OpenAllAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public async Task WorkAsync(ClipVerdict verdict, CancellationToken cancellationToken)
    {
        foreach (var silent in verdict.Silent)
            record.Append(Result(silent.Output, 0, SweepPriors.Nothing, 0));
        if (verdict.Clipped is not { } clipped)
            return;
        record.Append(new OutputRecognised(Stage, clipped.Output, clipped.ToneHertz, clipped.By));
        signals.Recognised(clipped);
        board.Show(status => status.Reading(clipped));
        var result = await SearchAsync(Output(clipped.Output), clipped, cancellationToken);
        await CompleteAsync(clipped, result, cancellationToken);
    }

    private async Task<PeakResult> SearchAsync(GeneratorOutput output, ClippedOutput clipped, CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        var tone = new Frequency(clipped.ToneHertz ?? record.Profile.ToneOf(output).Hertz);
        await levels.PrepareAsync(ToneWatch.LargestLevel, tone, cancellationToken);
        var prior = SweepPriors.For(output, record.State);
        if (bench.IsTyped)
            return await SearchByHandAsync(output, prior, cancellationToken);
        var limits = new PeakSearchOptions { Smallest = bench.Fixture.Smallest, Largest = bench.Fixture.Largest };
        var search = new PeakSearch(prior, limits);
        while (search.Next() is PeakStep.Read wanted)
        {
            search.Tell(await ReadAsync(output.Number, wanted.Capacitance, began, cancellationToken));
            board.Show(status => status with { Readings = record.State.InHand!.Readings, Fit = search.Current });
        }

        var result = ((PeakStep.Done)search.Next()).Result;
        return result is { Reason: PeakStopReason.BoundReached, Peak: { } peak }
            ? Closed(result, await ReadAsync(output.Number, Within(peak), began, cancellationToken), prior, limits)
            : result;
    }

    private async Task<PeakResult> SearchByHandAsync(GeneratorOutput output, PeakPrior prior, CancellationToken cancellationToken)
    {
        var answer = await new TypedSearch(bench, levels, record, board, clock).SearchAsync(output, prior, cancellationToken);
        _boxOffset = answer.BoxOffsetPicofarads;
        return answer.Result;
    }

    private async Task<PeakReading> ReadAsync(int output, Capacitance wanted, long began, CancellationToken cancellationToken)
    {
        var (set, sample) = await bench.WithSetAsync(wanted, () => levels.ReadAsync(cancellationToken), cancellationToken);
        var elapsed = clock.GetElapsedTime(began);
        record.Append(Reading(output, set, sample, elapsed));
        return new(set, sample.Mean, sample.RelativeNoise, elapsed, sample.Settled);
    }

    // The flanks say where the peak is; how high and how wide it is they only say together with a reading on top.
    private static PeakResult Closed(PeakResult result, PeakReading onTop, PeakPrior prior, PeakSearchOptions limits)
    {
        var again = new PeakSearch(prior, limits with { Budget = result.Trace.Count + 1 });
        foreach (var point in result.Trace)
            again.Tell(point.Reading);
        again.Tell(onTop);
        return again.Next() is PeakStep.Done { Result: { Reason: PeakStopReason.BoundReached } closed } ? closed : result;
    }

    // The tone is counted once more, at the peak, where it is loudest: only then is it certain whose peak this is.
    private async Task CompleteAsync(ClippedOutput clipped, PeakResult result, CancellationToken cancellationToken)
    {
        var sight = await ConfirmAsync(clipped.Output, result.Peak, cancellationToken);
        if (Objection(clipped, sight) is { } why)
        {
            record.Append(new OutputAbandoned(Stage, clipped.Output, why));
            board.Show(status => status with
            {
                Activity = BenchActivity.NeedsYou,
                Message = $"{why} Output {clipped.Output} is measured again when it is clipped.",
            });
            await (sight is ToneSight.Tone ? signals.WrongOutputAsync(cancellationToken) : signals.QuestionAsync(cancellationToken));
            return;
        }

        record.Append(Result(clipped.Output, (sight as ToneSight.Tone)?.Hertz ?? clipped.ToneHertz ?? 0, result, record.State.InHand!.Readings.Count) with { BoxOffsetPicofarads = _boxOffset });
        await RestAsync(cancellationToken);
        await signals.DoneAsync(cancellationToken);
    }

    private async Task<ToneSight> ConfirmAsync(int output, Capacitance? peak, CancellationToken cancellationToken)
    {
        var loudest = bench.Dialled is null && peak is { } found ? Within(found) : (Capacitance?)null;
        return (await bench.WithSetAsync(loudest, () => clips.ConfirmAsync(output, cancellationToken), cancellationToken)).Result;
    }

    private static string? Objection(ClippedOutput clipped, ToneSight sight) => sight switch
    {
        ToneSight.Tone tone when tone.Output != clipped.Output => $"The clip moved to output {tone.Output} during the sweep.",
        ToneSight.Silence when clipped.ToneHertz is not null =>
            "The tone went away during the sweep: the clip came off, or the motor stopped.",
        _ => null,
    };

    private LevelRead Reading(int output, Capacitance set, LevelSample sample, TimeSpan since) => new()
    {
        Stage = Stage,
        Output = output,
        Picofarads = set.Picofarads,
        Millivolts = sample.Mean.Millivolts,
        RelativeNoise = sample.RelativeNoise,
        Samples = sample.Samples,
        Settled = sample.Settled,
        Seconds = since.TotalSeconds,
    };

    private static OutputSwept Result(int output, double hertz, PeakResult result, int readings) => new()
    {
        Output = output,
        ToneHertz = hertz,
        Reason = result.Reason,
        PeakPicofarads = result.Peak?.Picofarads,
        PeakSdPicofarads = Finite(result.PeakSdPicofarads),
        HalfWidthPicofarads = Finite(result.HalfWidthPicofarads),
        Q = Finite(result.Q),
        PeakMillivolts = result.LevelAtPeak?.Millivolts,
        HumMillivolts = result.Hum?.Millivolts,
        Law = result.Law,
        LogOddsSeriesOverShunt = result.LogOddsSeriesOverShunt,
        LogOddsGeneral = result.LogOddsGeneral,
        LossBoundDecibels = Finite(result.LossBoundDecibels),
        Readings = readings,
    };

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;

    private GeneratorOutput? Next()
    {
        var missing = record.State.Missing(Stage).ToList();
        var next = ClippingOrder.Next(record.State, Stage) ?? missing.Select(output => (int?)output).FirstOrDefault();
        return next is { } number ? Output(number) : null;
    }

    private GeneratorOutput Output(int number) => record.Profile.Outputs.Single(output => output.Number == number);

    private Capacitance Within(Capacitance wanted) =>
        new(Math.Clamp(wanted.Picofarads, bench.Fixture.Smallest.Picofarads, bench.Fixture.Largest.Picofarads));
}
