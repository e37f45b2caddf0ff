using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The big states in words that are read from a metre and a half away.</summary>
public static class StateWords
{
    /// <summary>The state of the bench.</summary>
    /// <param name="state">The job; none where the work is about none.</param>
    /// <param name="status">What the work shows.</param>
    /// <param name="asked">What the work waits for from the person; none while it asks nothing.</param>
    public static BigState Of(JobState? state, BenchStatus status, Question? asked)
    {
        if (asked is { WantsKey: false } question)
            return Asked(state, status, question);
        var output = status.Output ?? (status.Activity == BenchActivity.Waiting ? status.Next : null);
        return new(TurnOf(status.Activity), Word(status), Hint(state, status, asked is not null), output, Tone(state, status, output))
        {
            Message = Message(status, asked),
        };
    }

    /// <summary>A tone as it is written: <c>740.00 Hz</c>.</summary>
    public static string Hertz(double hertz) => string.Create(CultureInfo.InvariantCulture, $"{hertz:0.00} Hz");

    private static BigState Asked(JobState? state, BenchStatus status, Question asked)
    {
        var (word, hint) = asked.Detail?.Kind switch
        {
            BenchQuestionKind.Level => ("Read the meter", "when its digits stand still"),
            BenchQuestionKind.Dials => ("Turn the dials", "then Enter, or the pedal"),
            BenchQuestionKind.Box => ("Measure the box", "as it stands, leads and all"),
            _ => ("Please answer", ""),
        };
        return new(asked.Detail is null ? BenchTurn.Look : BenchTurn.Hands, word, hint, status.Output, Tone(state, status, status.Output));
    }

    private static BenchTurn TurnOf(BenchActivity activity) => activity switch
    {
        BenchActivity.Connecting => BenchTurn.Rest,
        BenchActivity.Waiting => BenchTurn.Hands,
        BenchActivity.Reading => BenchTurn.Meter,
        BenchActivity.Moving => BenchTurn.Magnet,
        BenchActivity.NeedsYou => BenchTurn.Look,
        BenchActivity.Paused => BenchTurn.Missing,
        _ => BenchTurn.Done,
    };

    private static string Word(BenchStatus status) => status.Activity switch
    {
        BenchActivity.Connecting => "Connecting",
        BenchActivity.Waiting => "Clip it on",
        BenchActivity.Reading => "Hands off",
        BenchActivity.Moving when status.Levelling is { Order: { } order } =>
            string.Create(CultureInfo.InvariantCulture, $"Magnet {MagnetWords.Name(order.Direction)} {order.Millimetres:0.000} mm"),
        BenchActivity.Moving => "Hold still",
        BenchActivity.Done => "Done",
        BenchActivity.NeedsYou => "Please look",
        // Work with parts needs one instrument only, and that is none of the generator's.
        BenchActivity.Paused when status.Missing.Count == 0 => "No capacitance meter",
        BenchActivity.Paused => $"No {MissingWords.Names(status.Missing).Replace("and the", "and no", StringComparison.Ordinal)}",
        _ => "All done",
    };

    private static string Hint(JobState? state, BenchStatus status, bool waitsForKey) => status.Activity switch
    {
        BenchActivity.Connecting => "the instruments are opened and checked",
        BenchActivity.Waiting when waitsForKey => "then Enter, or the pedal",
        BenchActivity.Waiting => "or any other that is open on the map",
        BenchActivity.Reading => "wait for the sound",
        BenchActivity.Moving when waitsForKey => "lock it, then Enter or the pedal",
        BenchActivity.Moving => "lock it and keep off",
        BenchActivity.Done or BenchActivity.NeedsYou when status.Next is { } next => Next(state, next),
        BenchActivity.Paused => "plug it in: the work goes on by itself",
        _ => "",
    };

    private static string Next(JobState? state, int next) =>
        Expected(state, next) is { Length: > 0 } tone ? $"next: {next}, {tone}" : $"next: {next}";

    private static string Tone(JobState? state, BenchStatus status, int? output) => (status.ToneHertz, output) switch
    {
        ({ } hertz, _) => Hertz(hertz),
        (_, { } number) when status.Activity == BenchActivity.Waiting => Expected(state, number),
        _ => "",
    };

    private static string Expected(JobState? state, int number) => state?.Profile?.Outputs.Where(one => one.Number == number)
        .Select(one => string.Create(CultureInfo.InvariantCulture, $"about {state.Profile.ToneOf(one).Hertz:0.0} Hz")).FirstOrDefault("") ?? "";

    // Where only a key is waited for, the buttons say what the line would: it names keys that a touch screen has not.
    private static string? Message(BenchStatus status, Question? asked) => status.Activity == BenchActivity.Waiting && asked is { WantsKey: true }
        ? null
        : status.Message;
}
