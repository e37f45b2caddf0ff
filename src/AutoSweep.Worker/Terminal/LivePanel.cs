using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The moving screen: one big state, the output at the clips, its readings and fit, the map of all outputs.</summary>
/// <param name="console">The terminal.</param>
/// <param name="record">The job.</param>
/// <param name="board">The bench's status.</param>
public sealed class LivePanel(IAnsiConsole console, JobRecord record, BenchBoard board) : IBenchScreen
{
    /// <summary>Columns that the panel needs.</summary>
    public const int Width = 96;

    /// <summary>Rows that the panel needs.</summary>
    public const int Height = 30;

    // Ten pictures a second look alive and leave the machine to the bench.
    private static readonly TimeSpan Redraw = TimeSpan.FromMilliseconds(100);

    private readonly StageClock _stageClock = new(TimeProvider.System);

    /// <inheritdoc/>
    public async Task ShowAsync(CancellationToken closing)
    {
        board.Sounded += Ring;
        await console.Live(Picture()).StartAsync(async live =>
        {
            using var timer = new PeriodicTimer(Redraw, TimeProvider.System);
            try
            {
                while (await timer.WaitForNextTickAsync(closing))
                    live.UpdateTarget(Picture());
            }
            catch (OperationCanceledException)
            {
                live.UpdateTarget(Picture());
            }
        });
        board.Sounded -= Ring;
    }

    /// <summary>The screen as it stands now.</summary>
    public IRenderable Picture()
    {
        var (state, status) = (record.State, board.Status);
        var middle = new Grid().AddColumn(new GridColumn().Width(44)).AddColumn(new GridColumn().Width(48));
        middle.AddRow(BigState(status), new Rows(CurvePlot.Draw(status), ReadingsText.Draw(status)));
        return new Rows(Heading(state, status), middle, OutputMap.Draw(state, status), Footer(state, status));
    }

    private Rule Heading(JobState state, BenchStatus status)
    {
        var name = state.Profile is { } profile ? Markup.Escape(profile.Name) : "";
        if (status.Stage is not { } stage || !state.Planned.TryGetValue(stage, out var planned))
            return new Rule($"[bold]{name}[/]").LeftJustified();
        var done = planned.Count(output => state.IsDone(stage, output));
        return new Rule($"[bold]{name}[/]   {stage} {done} of {planned.Count}   {_stageClock.Remaining(stage, done, planned.Count)}").LeftJustified();
    }

    private static Panel BigState(BenchStatus status)
    {
        var (word, colour) = status.Activity switch
        {
            BenchActivity.Connecting => ("CONNECTING", Color.Grey),
            BenchActivity.Waiting => ("CLIP THE NEXT", Color.Aqua),
            BenchActivity.Reading => ("READING: HANDS OFF", Color.Yellow),
            BenchActivity.Done => ("DONE: NEXT ONE", Color.Green),
            BenchActivity.NeedsYou => ("PLEASE LOOK", Color.Red),
            _ => ("ALL DONE", Color.Green),
        };
        var number = status.Output is { } output ? new FigletText($"{output}").Color(colour).Centered() : (IRenderable)new FigletText("--").Color(Color.Grey).Centered();
        var tone = status.ToneHertz is { } hertz ? FormattableString.Invariant($"{hertz:0.00} Hz") : " ";
        return new Panel(new Rows(number, new Align(new Text(tone), HorizontalAlignment.Center), new Align(new Text(word, new Style(colour, decoration: Decoration.Bold)), HorizontalAlignment.Center)))
        {
            Border = BoxBorder.Rounded,
            BorderStyle = new Style(colour),
            Width = 42,
        };
    }

    private static Rows Footer(JobState state, BenchStatus status)
    {
        var message = status.Message is { } words ? new Text(words, new Style(Color.Red, decoration: Decoration.Bold)) : new Text(" ");
        var next = status.Next is { } output && state.Profile is { } profile
            ? FormattableString.Invariant($"Next by the plan: {output} ({profile.ToneOf(profile.Outputs.Single(one => one.Number == output)).Hertz:0.0} Hz)   Any order will do. Ctrl-C stops; --resume goes on.")
            : "Ctrl-C stops; --resume goes on.";
        return new Rows(message, new Text(next, new Style(Color.Grey)));
    }

    private void Ring(BenchSound sound) => console.Profile.Out.Writer.Write(sound == BenchSound.Done ? "\a" : "\a\a");
}
