using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.ByHand;

/// <summary>A peak search in which a person dials, types levels, or both; every typed level can be taken back.</summary>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class TypedSearch(ConnectedBench bench, LevelReader levels, JobRecord record, BenchBoard board, TimeProvider clock)
{
    // A fit through the readings is right within a factor of three from the third reading on, a decade is ten (an estimate, not measured).
    private const double FactorOfFit = 3;

    // Between two settings of one search lie 20 dB at most where both are within two half-widths of the peak.
    private const double FactorOfReading = 8;

    // Terminals give 3 to 15 mV (trade figures); a filter out of tune far less.
    private const double FactorOfTrade = 25;

    private static readonly Level Usual = Level.FromMillivolts(4);

    /// <summary>Searches, as often as somebody takes a level back, to the end.</summary>
    /// <param name="output">The output at the clips.</param>
    /// <param name="prior">What is believed of its peak.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>The answer, and what the box was off by as it stood at the end, where it was measured.</returns>
    public async Task<TypedAnswer> SearchAsync(GeneratorOutput output, PeakPrior prior, CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        var options = Options();
        List<(PeakReading Reading, long Entry)> told = [];
        while (true)
        {
            var search = Replay(prior, options, told.Select(one => one.Reading));
            board.Show(status => status with { Readings = record.State.InHand!.Readings, Fit = search.Current });
            if (search.Next() is PeakStep.Done { Result: var result })
            {
                if (await FinishAsync(result, options, told.Count, cancellationToken) is { } answer)
                    return answer;
                TakeBack(told);
            }
            else if (await ReadAsync(output.Number, (PeakStep.Read)search.Next(), search.Current, told, began, cancellationToken) is { } read)
                told.Add(read);
            else
                TakeBack(told);
        }
    }

    private PeakSearchOptions Options() => bench.Dialled is { } dialled
        ? PeakSearchOptions.ByHand(dialled.Box)
        : new() { Smallest = bench.Fixture.Smallest, Largest = bench.Fixture.Largest, LossBoundDecibels = 0.05 };

    // The same readings give the same search: what was taken back was never told.
    private static PeakSearch Replay(PeakPrior prior, PeakSearchOptions options, IEnumerable<PeakReading> readings)
    {
        var search = new PeakSearch(prior, options);
        foreach (var reading in readings)
        {
            search.Next();
            search.Tell(reading);
        }

        return search;
    }

    // None when the person takes the level before it back.
    private async Task<(PeakReading Reading, long Entry)?> ReadAsync(
        int output, PeakStep.Read wanted, PeakFit? fit, List<(PeakReading Reading, long Entry)> told, long began, CancellationToken cancellationToken)
    {
        var canTakeBack = told.Count > 0;
        Capacitance? set = bench.Dialled is { } dialled
            ? await dialled.DialAsync(wanted.Capacitance, canTakeBack, cancellationToken)
            : await bench.Fixture.SetAsync(wanted.Capacitance, cancellationToken);
        if (set is not { } total)
            return null;
        Expect(total, fit, canTakeBack ? told[^1].Reading.Level : null);
        if (await levels.ReadOrTakeBackAsync(canTakeBack, cancellationToken) is not { } sample)
            return null;
        var elapsed = clock.GetElapsedTime(began);
        var entry = record.Append(new LevelRead
        {
            Stage = JobStage.Sweep,
            Output = output,
            Picofarads = total.Picofarads,
            Millivolts = sample.Mean.Millivolts,
            RelativeNoise = sample.RelativeNoise,
            Samples = sample.Samples,
            Settled = sample.Settled,
            Seconds = elapsed.TotalSeconds,
        });
        return (new(total, sample.Mean, sample.RelativeNoise, elapsed, sample.Settled), entry.Sequence);
    }

    private void Expect(Capacitance set, PeakFit? fit, Level? last)
    {
        if (fit is not null)
            levels.Expect(fit.Curve.LevelAt(set), FactorOfFit, "is what the readings so far say");
        else if (last is { Volts: > 0 })
            levels.Expect(last, FactorOfReading, "was the reading before");
        else
            levels.Expect(Usual, FactorOfTrade, "is usual at a terminal");
    }

    private void TakeBack(List<(PeakReading Reading, long Entry)> told)
    {
        record.Append(new EntryWithdrawn(told[^1].Entry));
        told.RemoveAt(told.Count - 1);
    }

    // None when the person takes the last level back.
    private async Task<TypedAnswer?> FinishAsync(PeakResult result, PeakSearchOptions options, int readings, CancellationToken cancellationToken)
    {
        if (bench.Dialled is not { } dialled || options.Box is not { } box)
            return new(result, null);
        if (result.Reason != PeakStopReason.BoundReached)
            return new(DialledPeak.Unmeasured(result, box), null);
        var measured = await dialled.MeasureAsync(cancellationToken);
        if (measured.TakenBack && readings > 0)
            return null;
        if (measured.Shown is not { } shown)
            return new(DialledPeak.Unmeasured(result, box), null);
        var stood = result.Trace[^1].Reading.Capacitance;
        return new(DialledPeak.Measured(result, stood, shown, measured.SdPicofarads), (shown - stood).Picofarads);
    }
}
