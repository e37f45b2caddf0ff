using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>The check: the level of every fitted output, with its parts soldered in, against what its sweep predicted.</summary>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="signals">The sounds.</param>
public sealed class CheckStage(ConnectedBench bench, LevelReader levels, JobRecord record, BenchBoard board, BenchSignals signals) : IBenchStage
{
    /// <inheritdoc/>
    public JobStage Stage => JobStage.Check;

    /// <inheritdoc/>
    public IReadOnlyList<int> Plan => [.. record.State.Fitted.Keys.Where(output => LevelPrediction.Of(record.State, output) is not null)];

    /// <inheritdoc/>
    public Task RestAsync(CancellationToken cancellationToken) =>
        bench.HasFixture ? bench.Fixture.OpenAllAsync(cancellationToken) : Task.CompletedTask;

    /// <inheritdoc/>
    public async Task WorkAsync(ClipVerdict verdict, CancellationToken cancellationToken)
    {
        foreach (var silent in verdict.Silent)
            record.Append(Prediction(silent.Output).Compare(silent.Output, null, silent.Reading));
        if (verdict.Clipped is { } clipped)
            await CheckAsync(clipped, cancellationToken);
    }

    private async Task CheckAsync(ClippedOutput clipped, CancellationToken cancellationToken)
    {
        record.Append(new OutputRecognised(Stage, clipped.Output, clipped.ToneHertz, clipped.By));
        signals.Recognised(clipped);
        board.Show(status => status with { Activity = BenchActivity.Reading, Output = clipped.Output, ToneHertz = clipped.ToneHertz, Readings = [], Fit = null, Message = null });
        var output = record.Profile.Outputs.Single(one => one.Number == clipped.Output);
        await levels.PrepareAsync(ToneWatch.LargestLevel, new(clipped.ToneHertz ?? record.Profile.ToneOf(output).Hertz), cancellationToken);
        levels.Expect(Level.FromMillivolts(Prediction(clipped.Output).Millivolts), 4, "is what its sweep predicts");
        var verdict = Prediction(clipped.Output).Compare(clipped.Output, clipped.ToneHertz, await levels.ReadAsync(cancellationToken));
        record.Append(verdict);
        if (verdict.IsExplained)
        {
            await signals.DoneAsync(cancellationToken);
            return;
        }

        board.Show(status => status with { Activity = BenchActivity.NeedsYou, Message = Words(verdict) });
        await signals.QuestionAsync(cancellationToken);
    }

    private static string Words(OutputChecked verdict) => string.Create(CultureInfo.InvariantCulture,
        $"Output {verdict.Output} gives {verdict.Millivolts:0.000} mV where {verdict.PredictedMillivolts:0.000} mV were predicted ({verdict.DifferenceDecibels:+0.0;-0.0} dB). ")
        + "A cold joint, the wrong parts, or a coil wire? Look before you go on; it is written down.";

    private LevelPrediction Prediction(int output) =>
        LevelPrediction.Of(record.State, output) ?? throw new InvalidOperationException($"Output {output} is not in the plan.");
}
