using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>Watches the clips hands-free: names what is clipped, asks about what is odd, and never needs a key.</summary>
/// <param name="tones">Looks at the clips.</param>
/// <param name="hunt">Hunts for a level where a far-off capacitance may hide the tone.</param>
/// <param name="levels">Reads what a silent output gives.</param>
/// <param name="record">The job.</param>
/// <param name="questions">Asks the person.</param>
/// <param name="options">Patience.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class ClipWatch(
    ToneWatch tones,
    LevelHunt hunt,
    LevelReader levels,
    JobRecord record,
    ClipQuestions questions,
    ClipWatchOptions options,
    TimeProvider clock) : IClipSource
{
    private int? _held;
    private bool _waitForGap;
    private int _uncountable;

    // What was read in silences that no habit gave to an output: perhaps the first outputs of a survey, before there is a habit.
    private readonly List<(LevelSample Reading, ToneSight.Silence Hum)> _unclaimed = [];

    /// <inheritdoc/>
    public async Task<ClipVerdict> NextAsync(JobStage stage, CancellationToken cancellationToken)
    {
        var spell = new SilentSpell(clock);
        while (true)
        {
            var verdict = await tones.LookAsync(cancellationToken) switch
            {
                ToneSight.Tone tone => await HearAsync(stage, tone, spell, cancellationToken),
                ToneSight.Silence silence => await WaitAsync(stage, silence, spell, cancellationToken),
                ToneSight.Foreign foreign when !_waitForGap => await AskForeignAsync(stage, foreign, cancellationToken),
                ToneSight.Uncountable => await MakeOutAsync(stage, spell, cancellationToken),
                _ => null,
            };
            if (verdict is not null)
                return verdict;
        }
    }

    /// <inheritdoc/>
    public Task<ToneSight> ConfirmAsync(int output, CancellationToken cancellationToken) => tones.LookAsync(cancellationToken);

    private async Task<ClipVerdict?> HearAsync(JobStage stage, ToneSight.Tone tone, SilentSpell spell, CancellationToken cancellationToken)
    {
        if (tone.Output == _held && _waitForGap)
            return null;
        Hold(tone.Output);
        if (Doubt(stage, tone.Output) is { } doubt)
        {
            await questions.AskAsync(stage, doubt, tone.Output, tone.Hertz, cancellationToken);
            return null;
        }

        return new(new(tone.Output, tone.Hertz, RecognisedBy.Tone), Silent(stage, tone.Output, spell));
    }

    private ClipQuestion? Doubt(JobStage stage, int output)
    {
        var state = record.State;
        if (!state.Planned[stage].Contains(output))
            return ClipQuestion.NotInPlan;
        return state.IsDone(stage, output) && !IsWorthAnother(stage, output) ? ClipQuestion.AlreadyDone : null;
    }

    // An output that was written down as silent and now sounds was not silent after all.
    private bool IsWorthAnother(JobStage stage, int output) => stage switch
    {
        JobStage.Survey or JobStage.AsLeft => record.State.SurveyOf(stage)[output].ToneHertz is null,
        JobStage.Sweep => record.State.Swept[output].PeakPicofarads is null,
        JobStage.Check => !record.State.Checked[output].IsExplained,
        _ => false,
    };

    private List<SilentOutput> Silent(JobStage stage, int output, SilentSpell spell)
    {
        var passed = ClippingOrder.PassedOver(record.State, stage, output);
        if (passed.Count == 0)
            _unclaimed.AddRange(spell.Readings);
        return passed.Count <= spell.Readings.Count
            ? [.. passed.Zip(spell.Readings.TakeLast(passed.Count), (number, one) => new SilentOutput(number, one.Reading, one.Hum.Hum, one.Hum.HumHertz))]
            : [];
    }

    private async Task<ClipVerdict?> WaitAsync(
        JobStage stage, ToneSight.Silence silence, SilentSpell spell, CancellationToken cancellationToken)
    {
        spell.Heard();
        _waitForGap = false;
        _held = null;
        // First: a computer that was asleep has waited long enough for both, and finds the fixture open.
        if (stage == JobStage.Sweep && spell.SinceHunted > options.SilenceBeforeHunt)
            return await HuntAsync(spell, cancellationToken);
        return spell.SinceAsked > Patience(stage, spell) ? await AskSilenceAsync(stage, silence, spell, cancellationToken) : null;
    }

    private async Task<ClipVerdict?> HuntAsync(SilentSpell spell, CancellationToken cancellationToken)
    {
        await hunt.SettleOnLoudestAsync(cancellationToken);
        spell.Hunted();
        return null;
    }

    private static bool IsSurvey(JobStage stage) => stage is JobStage.Survey or JobStage.AsLeft;

    // A person who is busy with a capacitor is asked twice, not every minute.
    private TimeSpan Patience(JobStage stage, SilentSpell spell) => IsSurvey(stage)
        ? options.SilenceBeforeSurveyQuestion
        : options.SilenceBeforeSweepQuestion * (1 << Math.Min(spell.Questions, 3));

    private async Task<ClipVerdict?> AskSilenceAsync(
        JobStage stage, ToneSight.Silence silence, SilentSpell spell, CancellationToken cancellationToken)
    {
        if (await tones.ListenCloselyAsync(cancellationToken) is { } tone)
            return await HearAsync(stage, tone, spell, cancellationToken);
        var reading = await levels.ReadAsync(cancellationToken);
        if (stage == JobStage.Sweep && !await hunt.StandsAsync(cancellationToken))
            return await HuntAsync(spell, cancellationToken);
        spell.Asked(reading, silence);
        await questions.AskAsync(stage, ClipQuestion.NoTone, ClippingOrder.Next(record.State, stage), null, cancellationToken);
        return spell.Length > Conclusion(stage) ? new(null, Conclude(stage, spell)) : null;
    }

    // Whoever has gone on hangs the clip in the air at last: the readings of before belong to the outputs that are missing, in order.
    private List<SilentOutput> Conclude(JobStage stage, SilentSpell spell)
    {
        var missing = record.State.Missing(stage).ToList();
        var read = _unclaimed.Concat(spell.Readings).ToList();
        var own = read.Count >= missing.Count ? read.Take(missing.Count) : Enumerable.Repeat(read[^1], missing.Count);
        _unclaimed.Clear();
        return [.. missing.Zip(own, (output, one) => new SilentOutput(output, one.Reading, one.Hum.Hum, one.Hum.HumHertz))];
    }

    // An output that was silent in the survey gets the same patience in a sweep: an open old capacitor silences it, and the fixture does not.
    private TimeSpan Conclusion(JobStage stage) =>
        IsSurvey(stage) ? options.SilenceBeforeSurveyConclusion : options.SilenceBeforeSweepConclusion;

    private async Task<ClipVerdict?> AskForeignAsync(JobStage stage, ToneSight.Foreign foreign, CancellationToken cancellationToken)
    {
        Hold(null);
        if (IsSurvey(stage) && ClippingOrder.Next(record.State, stage) is { } next)
            return new(new(next, foreign.Hertz, RecognisedBy.Order), []);
        await questions.AskAsync(stage, ClipQuestion.UnknownTone, null, foreign.Hertz, cancellationToken);
        return null;
    }

    // A tone that cannot be counted: give it the capacitance that gives most level, then go by the order, then ask.
    private async Task<ClipVerdict?> MakeOutAsync(JobStage stage, SilentSpell spell, CancellationToken cancellationToken)
    {
        if (stage == JobStage.Sweep && await hunt.SettleOnLoudestAsync(cancellationToken)
            && await tones.LookAsync(cancellationToken) is ToneSight.Tone tone)
            return await HearAsync(stage, tone, spell, cancellationToken);
        // A quick hand leaves no gap to be seen, so a new tone is listened for all the same; but only a gap makes it sure that the
        // clip has moved when the tone stays unknown.
        if (_waitForGap || ++_uncountable < options.LooksBeforeGoingByOrder)
            return null;
        Hold(null);
        if (ClippingOrder.Next(record.State, stage) is { } next)
            return new(new(next, null, RecognisedBy.Order), []);
        await questions.AskAsync(stage, ClipQuestion.ToneNotCounted, null, null, cancellationToken);
        return null;
    }

    private void Hold(int? output)
    {
        _uncountable = 0;
        _held = output;
        _waitForGap = true;
    }
}
