using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Levelling;

/// <summary>Levelling: each output that is still off the curve after the recap is brought into its band at its magnet, move by move.</summary>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="moves">Tells when a rod has been moved.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="signals">The sounds.</param>
/// <param name="options">How it is done.</param>
public sealed class LevellingStage(
    ConnectedBench bench, LevelReader levels, IMoveSource moves, JobRecord record, BenchBoard board, BenchSignals signals,
        LevellingOptions options) : IBenchStage
{
    private readonly MagnetWorkOrder _order = LevellingPlan.Of(record.State, options);
    private readonly HashSet<int> _abandoned = [];

    /// <inheritdoc/>
    public JobStage Stage => JobStage.Level;

    /// <summary>The outputs in the order of work: most gain for least handling first.</summary>
    public IReadOnlyList<int> Plan => [.. _order.Works.Select(work => work.Output)];

    /// <inheritdoc/>
    /// <exception cref="BenchFaultException">Nobody has acknowledged the hazard.</exception>
    public async Task RestAsync(CancellationToken cancellationToken)
    {
        record.Append(new HazardAcknowledged(Stage, Cautions.Magnets, options.Acknowledged ?? throw new BenchFaultException(
            BenchFault.StageNotReady, "nobody has acknowledged the hazard at the magnets", "a person who has read it",
                "read it, then acknowledge it") { AtTerminal = "--understood" }));
        if (bench.HasFixture)
            await bench.Fixture.OpenAllAsync(cancellationToken);
        await AskForNextAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public async Task WorkAsync(ClipVerdict verdict, CancellationToken cancellationToken)
    {
        // Silence for minutes: the person has gone, and what is left stays as it is.
        if (verdict.Clipped is { } clipped)
            await LevelUpToAGapAsync(clipped, cancellationToken);
        else
            foreach (var output in record.State.Missing(Stage).ToList())
                Finish(output, GuidanceEnding.LeftAlone, null);
        await AskForNextAsync(cancellationToken);
    }

    // The last reading before an instrument went may be a damaged one: it is taken back. What was read before it stands, because the
    // magnet stands where those moves have left it.
    private async Task LevelUpToAGapAsync(ClippedOutput clipped, CancellationToken cancellationToken)
    {
        var before = record.State.Sequence;
        try
        {
            await LevelAsync(clipped, cancellationToken);
        }
        catch (BenchFaultException fault) when (fault.LostResource is not null)
        {
            if (record.State.InHand is not null && record.State.LastResult(Stage) is { } last && last.Sequence > before)
                record.Append(new EntryWithdrawn(last.Sequence));
            throw;
        }
    }

    private async Task LevelAsync(ClippedOutput clipped, CancellationToken cancellationToken)
    {
        record.Append(new OutputRecognised(Stage, clipped.Output, clipped.ToneHertz, clipped.By));
        signals.Recognised(clipped);
        board.Show(status => status.Reading(clipped));
        var output = OutputOf(clipped.Output);
        await levels.PrepareAsync(ToneWatch.LargestLevel, new(clipped.ToneHertz ?? record.Profile.ToneOf(output).Hertz), cancellationToken);
        var level = await ReadAsync(clipped.Output, cancellationToken);
        while (Guidance(clipped.Output).Next() is var step && step is not GuidanceStep.Done)
        {
            if (step is GuidanceStep.Read)
                level = await ReadAsync(clipped.Output, cancellationToken);
            else if (await MoveAsync(clipped.Output, (GuidanceStep.Move)step, level, cancellationToken) is { } moved)
                level = moved;
            else
                return;
        }

        await EndAsync(clipped.Output, cancellationToken);
    }

    // None when the work on this output is over.
    private async Task<LevelSample?> MoveAsync(int output, GuidanceStep.Move step, LevelSample before, CancellationToken cancellationToken)
    {
        await OrderAsync(output, step, before, cancellationToken);
        switch (await moves.WaitAsync(before, live => Show(output, live, step.Order), cancellationToken))
        {
            case MoveOutcome.Moved moved:
                Keep(output, moved.Level, step.Order);
                return moved.Level;
            case MoveOutcome.Undone:
                TakeBack(output);
                return await ReadAsync(output, cancellationToken);
            case MoveOutcome.ClipGone when _abandoned.Add(output):
                record.Append(new OutputAbandoned(Stage, output, "the clip came off"));
                return null;
            default:
                Finish(output, GuidanceEnding.LeftAlone, Guidance(output));
                return null;
        }
    }

    private async Task OrderAsync(int output, GuidanceStep.Move step, LevelSample level, CancellationToken cancellationToken)
    {
        var message = MagnetWords.Order(output, Decibels(output, level), step);
        Show(output, level, step.Order);
        board.Show(status => status with { Activity = BenchActivity.Moving, Message = message });
        await bench.Meter.ShowAsync(MagnetWords.Short(output, step.Order), cancellationToken);
        await signals.DoneAsync(cancellationToken);
    }

    private void Show(int output, LevelSample level, MagnetMove? order) => board.Show(status => status with
    {
        Levelling = new(Decibels(output, level), options.Guidance.HalfBandDecibels, order),
    });

    private async Task<LevelSample> ReadAsync(int output, CancellationToken cancellationToken)
    {
        board.Show(status => status with { Activity = BenchActivity.Reading, Message = null });
        var level = await levels.ReadAsync(cancellationToken, options.Samples, options.Span);
        Keep(output, level, null);
        return level;
    }

    private void Keep(int output, LevelSample level, MagnetMove? after)
    {
        // A clip that came off in the middle of a reading leaves nothing to take a logarithm of.
        record.Append(new MagnetRead
        {
            Output = output,
            Millivolts = Math.Max(level.Mean.Millivolts, 1e-6),
            TargetMillivolts = TargetOf(output),
            SdDecibels = LevelDecibels.Sd(level),
            After = after,
        });
        Show(output, level, null);
    }

    private void TakeBack(int output)
    {
        if (record.State.LastResult(Stage) is { } last && last.Output == output)
            record.Append(new EntryWithdrawn(last.Sequence));
    }

    private async Task EndAsync(int output, CancellationToken cancellationToken)
    {
        var guidance = Guidance(output);
        var ending = ((GuidanceStep.Done)guidance.Next()).Result.Ending;
        Finish(output, ending, guidance);
        if (ending == GuidanceEnding.InBand)
        {
            await signals.DoneAsync(cancellationToken);
            return;
        }

        board.Show(status => status with { Activity = BenchActivity.NeedsYou, Message = $"Output {output} {MagnetWords.Ending(ending)}." });
        await signals.QuestionAsync(cancellationToken);
    }

    private void Finish(int output, GuidanceEnding ending, MagnetGuidance? guidance)
    {
        var readings = record.State.Levelling.ReadingsOf(output);
        var slope = guidance is { Slope: { Observations: > 0 } learnt } ? learnt : null;
        record.Append(new OutputLevelled
        {
            Output = output,
            Ending = ending,
            Moves = readings.Count(reading => reading.After is not null),
            TargetMillivolts = TargetOf(output),
            BeforeMillivolts = readings.Count > 0 ? readings[0].Millivolts : null,
            AfterMillivolts = readings.Count > 0 ? readings[^1].Millivolts : null,
            SlopeDecibelsPerMillimetre = slope?.Median,
            SlopeLeast = slope?.Quantile(0.025),
            SlopeMost = slope?.Quantile(0.975),
        });
        board.Show(status => status with { Activity = BenchActivity.Done, Message = null });
    }

    private async Task AskForNextAsync(CancellationToken cancellationToken)
    {
        var next = record.State.Missing(Stage).Select(output => (int?)output).FirstOrDefault();
        await bench.Meter.ShowAsync(next is { } output ? $"CLIP {output}" : "DONE", cancellationToken);
    }

    // From the journal each time: what was taken back is not known, what was read before a stop is.
    private MagnetGuidance Guidance(int output) => MagnetGuidance.Replay(
        options.RodOf(output, OutputOf(output).WheelTeeth), options.Guidance, record.State.Levelling.ReadingsOf(output).Select(reading => reading.ToReading()));

    private GeneratorOutput OutputOf(int number) => record.Profile.Outputs.Single(one => one.Number == number);

    private double TargetOf(int output) => _order.Works.Single(work => work.Output == output).TargetMillivolts;

    private double Decibels(int output, LevelSample level) => 20 * Math.Log10(Math.Max(level.Mean.Millivolts, 1e-6) / TargetOf(output));
}
