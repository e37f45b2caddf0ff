using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>Asks the person at the bench about an odd clip: in the journal, on the screen and by sound.</summary>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="signals">The sounds.</param>
public sealed class ClipQuestions(JobRecord record, BenchBoard board, BenchSignals signals)
{
    /// <summary>Asks, and does not wait for an answer: the answer is what is clipped next.</summary>
    public async Task AskAsync(JobStage stage, ClipQuestion question, int? output, double? toneHertz, CancellationToken cancellationToken)
    {
        record.Append(new ClipQuestioned(stage, question, output, toneHertz));
        board.Show(status => status with
        {
            Activity = BenchActivity.NeedsYou,
            Output = output,
            ToneHertz = toneHertz,
            Readings = [],
            Fit = null,
            Message = Words(question, output, toneHertz),
        });
        await (IsWrongOutput(question) ? signals.WrongOutputAsync(cancellationToken) : signals.QuestionAsync(cancellationToken));
    }

    // A tone was heard for certain, and it is not one that is wanted here.
    private static bool IsWrongOutput(ClipQuestion question) =>
        question is ClipQuestion.AlreadyDone or ClipQuestion.NotInPlan or ClipQuestion.UnknownTone;

    private static string Words(ClipQuestion question, int? output, double? hertz) => question switch
    {
        ClipQuestion.AlreadyDone => $"Output {output} is done already. Clip another one.",
        ClipQuestion.NotInPlan => $"Output {output} is not in this plan. Clip another one.",
        ClipQuestion.UnknownTone => string.Create(
            CultureInfo.InvariantCulture,
            $"A steady tone of {hertz:0.0} Hz, which no output of this generator has. Is the motor in step, the profile the right one?"),
        ClipQuestion.ToneNotCounted => "Something sounds, but the meter cannot count it. Check the clip; a small amplifier before the "
            + "meter helps.",
        ClipQuestion.NoTone when output is not null => $"No tone. If output {output} is clipped it is silent: go on to the next, "
            + "it is written down. If not, clip it.",
        _ => "No tone. Clip an output that is still missing.",
    };
}
