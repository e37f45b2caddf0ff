using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Terminal;

public sealed class LinePrinterTests : IDisposable
{
    private readonly BenchScene _scene = new();

    public static TheoryData<JournalEvent, string?> Lines => new()
    {
        { new StageStarted(JobStage.Sweep, [9, 10]), "Sweep: 2 outputs planned" },
        { Some.Surveyed(7), "  output   7     440.00 Hz     4.250 mV" },
        { Some.Surveyed(7, SurveyFinding.HumOnly, SurveyFinding.Unsteady), "  output   7       no tone     4.250 mV  hum_only unsteady" },
        { Some.Swept(9), "  output   9     740.12 Hz  peak    104.57 nF ± 0.06  half-width   7.67 nF    5.372 mV  6 readings" },
        { Some.Swept(9) with { Reason = PeakStopReason.BudgetSpent }, "  output   9     740.12 Hz  peak    104.57 nF ± 0.06  half-width   7.67 nF    5.372 mV  6 readings  <- budget_spent" },
        { Silent, "  output  10       no tone  no peak  <- level_lost" },
        { new OutputAbandoned(JobStage.Sweep, 9, "The clip came off."), "  output   9  broken off: The clip came off." },
        { new InstrumentLost(BenchInstrument.Fixture, "ASRL/dev/ttyUSB0::INSTR", "The link broke."), "Lost: the fixture. The link broke." },
        { new StageEnded(JobStage.Survey), "Survey: complete" },
        { new OutputRecognised(JobStage.Sweep, 9, 740, RecognisedBy.Tone), null },
    };

    private static OutputSwept Silent => new() { Output = 10, ToneHertz = 0, Reason = PeakStopReason.LevelLost, Law = default, Readings = 0 };

    public void Dispose() => _scene.Dispose();

    [Theory]
    [MemberData(nameof(Lines))]
    public void An_event_is_one_line_or_none(JournalEvent what, string? expected) => Assert.Equal(expected, LinePrinter.Line(what));

    [Fact]
    public async Task A_wait_says_how_a_terminal_ends_it()
    {
        var output = new StringWriter { NewLine = "\n" };
        using var closing = new CancellationTokenSource();
        var shown = new LinePrinter(output, _scene.Job, _scene.Board).ShowAsync(closing.Token);

        _scene.Board.Show(status => status with { Activity = BenchActivity.Paused, Message = "The meter is gone." });
        await closing.CancelAsync();
        await shown;

        Assert.Contains("  >> The meter is gone. Ctrl-C stops.\n", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_shown_events_words_and_sounds_come_in_order_and_a_word_only_once()
    {
        var output = new StringWriter { NewLine = "\n" };
        using var closing = new CancellationTokenSource();
        var shown = new LinePrinter(output, _scene.Job, _scene.Board).ShowAsync(closing.Token);

        _scene.Begin(JobStage.Sweep, 9);
        _scene.Board.Show(status => status with { Message = "Clip output 9." });
        _scene.Board.Show(status => status with { Output = 9 });
        _scene.Board.Sound(BenchSound.Done);
        _scene.Board.Sound(BenchSound.Question);
        await closing.CancelAsync();
        await shown;
        _scene.Board.Sound(BenchSound.Done);

        Assert.Equal("Sweep: 1 outputs planned\n  >> Clip output 9.\n\a\a\a", output.ToString());
    }
}
