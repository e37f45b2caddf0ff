using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The one big state: an output's number in large digits, its tone, and a coloured bar that says what to do.</summary>
public static class StatePanel
{
    /// <summary>Columns, frame included.</summary>
    public const int Width = 44;

    private const int Inner = Width - 4;

    /// <summary>The colour that stands for a state everywhere on the screen.</summary>
    public static Color ColourOf(BenchActivity activity) => activity switch
    {
        BenchActivity.Connecting => Color.Grey,
        BenchActivity.Waiting => Color.Aqua,
        BenchActivity.Reading => Color.Yellow,
        BenchActivity.Moving => Color.Orange1,
        BenchActivity.NeedsYou or BenchActivity.Paused => Color.Red,
        _ => Color.Lime,
    };

    /// <summary>The panel for a status.</summary>
    public static IRenderable Draw(JobState state, BenchStatus status)
    {
        var colour = ColourOf(status.Activity);
        var shown = status.Output ?? (status.Activity == BenchActivity.Waiting ? status.Next : null);
        string[] number = [" ", .. BigNumber.Lines(shown).Select(Centred), Centred(ToneOf(state, status)), " "];
        string[] bar = ["", WordOf(status), NextOf(state, status), ""];
        return new Panel(new Rows(
        [
            .. number.Select(line => new Text(line, new Style(colour))),
            .. bar.Select(line => new Text(Centred(line), new Style(Color.Black, colour, Decoration.Bold))),
        ]))
        {
            Border = BoxBorder.Rounded,
            BorderStyle = new Style(colour),
            Width = Width,
        };
    }

    private static string WordOf(BenchStatus status) => status.Activity switch
    {
        BenchActivity.Connecting => "CONNECTING",
        BenchActivity.Waiting => "CLIP THE NEXT",
        BenchActivity.Reading => "READING: HANDS OFF",
        BenchActivity.Moving when status.Levelling is { Order: { } order } =>
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"MAGNET {MagnetWords.Name(order.Direction)} {order.Millimetres:0.000} mm"),
        BenchActivity.Done => "DONE: NEXT ONE",
        BenchActivity.NeedsYou => "PLEASE LOOK",
        BenchActivity.Paused => $"{string.Join(" AND ", status.Missing).ToUpperInvariant()} MISSING",
        _ => "ALL DONE",
    };

    private static string ToneOf(JobState state, BenchStatus status) => status.ToneHertz is { } hertz
        ? FormattableString.Invariant($"{hertz:0.00} Hz")
        : status.Output is null && status.Activity == BenchActivity.Waiting && status.Next is { } next ? Expected(state, next) : "";

    // While an output is read the next one is of no use; what is to be clipped now stands in large digits already.
    private static string NextOf(JobState state, BenchStatus status) => status switch
    {
        { Activity: BenchActivity.Done or BenchActivity.NeedsYou, Next: { } next } => $"next by the plan: {next}, {Expected(state, next)}",
        { Activity: BenchActivity.Reading } => "wait for the beep",
        { Activity: BenchActivity.Moving } => "then lock it and keep off",
        { Activity: BenchActivity.Waiting } => "or any other that is missing",
        { Activity: BenchActivity.Paused } => "plug it in: the work goes on by itself",
        _ => "",
    };

    private static string Expected(JobState state, int number) => state.Profile!.Outputs.Where(one => one.Number == number)
        .Select(one => FormattableString.Invariant($"{state.Profile.ToneOf(one).Hertz:0.0} Hz")).FirstOrDefault("");

    private static string Centred(string text) => text.PadLeft((Inner + text.Length) / 2).PadRight(Inner);
}
