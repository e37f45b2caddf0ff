using AutoSweep.Core.Fitting;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>The survey, as found or as left: tone, level and noise of every output, in whatever order they are clipped.</summary>
/// <param name="bench">The bench.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="signals">The sounds.</param>
/// <param name="options">Limits of what is noticed.</param>
/// <param name="clock">The bench's clock.</param>
/// <param name="stage">As found (<see cref="JobStage.Survey"/>) or as left.</param>
public sealed class SurveyStage(
    ConnectedBench bench,
    LevelReader levels,
    JobRecord record,
    BenchBoard board,
    BenchSignals signals,
    SurveyOptions options,
    TimeProvider clock,
    JobStage stage = JobStage.Survey) : IBenchStage
{
    /// <inheritdoc/>
    public JobStage Stage => stage;

    /// <inheritdoc/>
    public IReadOnlyList<int> Plan => [.. record.Profile.Outputs.Select(output => output.Number)];

    /// <inheritdoc/>
    public Task RestAsync(CancellationToken cancellationToken) =>
        bench.HasFixture ? bench.Fixture.OpenAllAsync(cancellationToken) : Task.CompletedTask;

    /// <inheritdoc/>
    public async Task WorkAsync(ClipVerdict verdict, CancellationToken cancellationToken)
    {
        foreach (var silent in verdict.Silent)
            WriteDown(silent);
        if (verdict.Clipped is { } clipped)
            await SurveyAsync(clipped, cancellationToken);
    }

    private void WriteDown(SilentOutput silent)
    {
        var millivolts = silent.Reading.Mean.Millivolts;
        record.Append(new OutputSurveyed
        {
            Stage = Stage,
            Output = silent.Output,
            Millivolts = millivolts,
            NoiseMillivolts = silent.Reading.SampleSd.Millivolts,
            RelativeUncertainty = silent.Reading.RelativeUncertainty,
            HumHertz = silent.HumHertz,
            Flags = [Finding(silent, millivolts)],
        });
    }

    // Behind a filter an aged capacitor can hide a tone from the counter: what sounds there and does not count as hum is left open.
    private SurveyFinding Finding(SilentOutput silent, double millivolts)
    {
        if (millivolts < options.DeadMillivolts)
            return SurveyFinding.Dead;
        var filtered = record.Profile.FilteredOutputs.Any(output => output.Number == silent.Output);
        return filtered && !silent.HumCounted ? SurveyFinding.ToneNotCounted : SurveyFinding.HumOnly;
    }

    private async Task SurveyAsync(ClippedOutput clipped, CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        record.Append(new OutputRecognised(Stage, clipped.Output, clipped.ToneHertz, clipped.By));
        signals.Recognised(clipped);
        board.Show(status => status.Reading(clipped));
        var output = record.Profile.Outputs.Single(one => one.Number == clipped.Output);
        await levels.PrepareAsync(ToneWatch.LargestLevel, new(clipped.ToneHertz ?? record.Profile.ToneOf(output).Hertz), cancellationToken);
        Expect(output);
        var sample = await levels.ReadAsync(cancellationToken, options.Samples, options.Span);
        record.Append(Reading(clipped.Output, sample, clock.GetElapsedTime(began)));
        var swing = clipped.ToneHertz is { } tone ? await levels.ReadSwingAsync(tone / output.WheelTeeth, cancellationToken) : null;
        record.Append(Surveyed(clipped, sample, swing));
        MarkSwap();
        await signals.DoneAsync(cancellationToken);
    }

    // An old capacitor may take 10 dB off a filtered output, neighbours differ by less.
    private void Expect(GeneratorOutput output)
    {
        var before = record.State.ClippingOrder.Count > 0 && record.State.SurveyOf(Stage).TryGetValue(record.State.ClippingOrder[^1], out var last) ? last.Millivolts : (double?)null;
        if (output.ExpectedMillivolts is { } healthy)
            levels.Expect(Level.FromMillivolts(healthy), 8, "is what the profile says of a healthy one");
        else if (before is > 0 and var near)
            levels.Expect(Level.FromMillivolts(near), 6, "had the output before it");
        else
            levels.Expect(Level.FromMillivolts(4), 25, "is usual at a terminal");
    }

    private LevelRead Reading(int output, LevelSample sample, TimeSpan since) => new()
    {
        Stage = Stage,
        Output = output,
        Millivolts = sample.Mean.Millivolts,
        RelativeNoise = sample.RelativeNoise,
        Samples = sample.Samples,
        Settled = sample.Settled,
        Seconds = since.TotalSeconds,
    };

    // A wheel that turns as often as the meter samples shows nothing, and what is put back for the detector then blows up noise.
    private bool IsSwinging(SwingFit? swing) =>
        swing is { } fit && fit.Depth > options.UnsteadySwing && fit.Depth > options.SwingOverUncertainty * fit.DepthUncertainty;

    private OutputSurveyed Surveyed(ClippedOutput clipped, LevelSample sample, SwingFit? swing)
    {
        List<SurveyFinding> flags = [];
        if (clipped is { By: RecognisedBy.Order, ToneHertz: not null })
            flags.Add(SurveyFinding.WrongTone);
        var isNamed = clipped is { By: RecognisedBy.Person, ToneHertz: null };
        if (isNamed && sample.Mean.Millivolts < options.DeadMillivolts)
            flags.Add(SurveyFinding.Dead);
        else if (!isNamed && clipped.ToneHertz is null)
            flags.Add(SurveyFinding.ToneNotCounted);
        if (sample.SampleSd.Volts > options.UnsteadyShare * sample.Mean.Volts || IsSwinging(swing))
            flags.Add(SurveyFinding.Unsteady);
        return new()
        {
            Stage = Stage,
            Output = clipped.Output,
            ToneHertz = clipped.ToneHertz,
            IsNamedByPerson = isNamed,
            Millivolts = sample.Mean.Millivolts,
            NoiseMillivolts = sample.SampleSd.Millivolts,
            RelativeUncertainty = sample.RelativeUncertainty,
            WheelSwing = swing?.Depth,
            WheelSwingUncertainty = swing?.DepthUncertainty,
            Flags = flags,
        };
    }

    // ..., n-1, n+1, n in somebody's ascending order: n and n+1 sit on each other's terminals, or the hand skipped one and went back.
    // Where no n-1 came before, because it is the beginning or n-1 is silent, a later one must have come after.
    private void MarkSwap()
    {
        var order = record.State.ClippingOrder;
        if (order.Count >= 4 && order[^1] + 1 == order[^2] && order[^3] + 2 == order[^2] && order[^4] + 1 == order[^3])
            MarkSwap(order[^1]);
        for (var last = Math.Max(2, order.Count - 3); last < order.Count; last++)
        {
            var (higher, lower) = (order[last - 2], order[last - 1]);
            if (higher == lower + 1 && order[last] > higher && (last == 2 || order[last - 3] < lower))
                MarkSwap(lower);
        }
    }

    private void MarkSwap(int lower)
    {
        foreach (var output in new[] { lower, lower + 1 })
        {
            var surveyed = record.State.SurveyOf(Stage)[output];
            if (!surveyed.Flags.Contains(SurveyFinding.Swapped))
                record.Append(surveyed with { Flags = [.. surveyed.Flags, SurveyFinding.Swapped] });
        }
    }
}
