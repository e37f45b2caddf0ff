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

    private static readonly Text Footer = new("Any order will do. Ctrl-C stops; --resume goes on.", new Style(Color.Grey));

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
        var middle = new Grid { Expand = false }
            .AddColumn(new GridColumn().Width(StatePanel.Width).Padding(0, 0, 1, 0))
            .AddColumn(new GridColumn().Width(PlotBox.Columns + 2).Padding(0, 0, 0, 0));
        var right = status.Stage is JobStage.Survey or JobStage.AsLeft
            ? new Rows(LevelPlot.Draw(state, status), FindingsText.Draw(state, status.Stage.Value))
            : status.Stage == JobStage.Level ? LevelBar.Draw(status) : new Rows(CurvePlot.Draw(status), ReadingsText.Draw(status));
        middle.AddRow(StatePanel.Draw(state, status), right);
        return new Rows(Heading(state, status), middle, Message(status), OutputMap.Draw(state, status), Footer);
    }

    private Rule Heading(JobState state, BenchStatus status)
    {
        var name = state.Profile is { } profile ? Markup.Escape(profile.Name) : "";
        if (status.Stage is not { } stage || !state.Planned.TryGetValue(stage, out var planned))
            return new Rule($"[bold]{name}[/]").LeftJustified();
        var done = planned.Count(output => state.IsDone(stage, output));
        var left = _stageClock.Remaining(stage, done, planned.Count);
        return new Rule($"[bold]{name}[/]   {stage} {done} of {planned.Count}   {left}").LeftJustified();
    }

    private static Text Message(BenchStatus status) => status.Message is { } words
        ? new Text(words, new Style(StatePanel.ColourOf(status.Activity), decoration: Decoration.Bold))
        : new Text(" ");

    // A terminal has one bell: it rings as the meter beeps.
    private void Ring(BenchSound sound) => console.Profile.Out.Writer.Write(sound switch { BenchSound.Recognised => "", BenchSound.Done => "\a", _ => "\a\a" });
}
