using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Terminal;

public sealed class LivePanelTests : IDisposable
{
    private readonly BenchScene _scene = new(profile: GeneratorProfileLibrary.Open("invented-quillmark-93-60hz"));

    public void Dispose() => _scene.Dispose();

    [Theory]
    [InlineData(BenchActivity.Connecting, "CONNECTING")]
    [InlineData(BenchActivity.Waiting, "CLIP THE NEXT")]
    [InlineData(BenchActivity.Reading, "READING: HANDS OFF")]
    [InlineData(BenchActivity.Done, "DONE: NEXT ONE")]
    [InlineData(BenchActivity.NeedsYou, "PLEASE LOOK")]
    [InlineData(BenchActivity.Paused, "METER AND FIXTURE MISSING")]
    [InlineData(BenchActivity.Finished, "ALL DONE")]
    public void Every_state_has_its_word_and_fits_the_panel(BenchActivity activity, string word)
    {
        Begin(JobStage.Sweep);
        foreach (var status in Statuses(activity))
        {
            _scene.Board.Show(_ => status);
            var lines = Lines();
            Assert.Contains(lines, line => line.Contains(word, StringComparison.Ordinal));
            Assert.All(lines, line => Assert.InRange(line.Length, 0, LivePanel.Width));
            Assert.InRange(lines.Length, 20, LivePanel.Height);
        }
    }

    [Fact]
    public void The_panel_keeps_its_height_from_the_first_reading_to_the_last()
    {
        Begin(JobStage.Sweep);

        Assert.Single(Statuses(BenchActivity.Reading).Select(Height).Distinct());
    }

    [Fact]
    public void An_output_is_shown_with_tone_readings_and_fit()
    {
        Begin(JobStage.Sweep);
        _scene.Board.Show(_ => Statuses(BenchActivity.Reading).Last());

        var text = string.Join('\n', Lines());
        foreach (var part in new[] { "1239.71 Hz", "141.20 nF     4.492 mV", "peak 142.12 nF ± 0.08 nF", "half-width 18.0 nF, series law", "●", "level over capacitance" })
            Assert.Contains(part, text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_survey_shows_its_level_curve_and_what_was_noticed()
    {
        Begin(JobStage.Survey);
        _scene.Surveyed(1, 2, 3);
        _scene.Job.Append(Some.Surveyed(8, SurveyFinding.HumOnly));
        _scene.Board.Show(status => status with { Activity = BenchActivity.Waiting, Stage = JobStage.Survey, Next = 4 });

        var text = string.Join('\n', Lines());
        foreach (var part in new[] { "Survey 4 of 93", "up to 4.25 mV", "output   8: hum_only", "  8!", "  3✓", "  4·" })
            Assert.Contains(part, text, StringComparison.Ordinal);
    }

    [Fact]
    public void While_waiting_the_next_output_stands_in_large_digits()
    {
        Begin(JobStage.Sweep);
        _scene.Board.Show(status => status with { Activity = BenchActivity.Waiting, Stage = JobStage.Sweep, Next = 47 });

        var lines = Lines();
        Assert.All(BigNumber.Lines(47), row => Assert.Contains(lines, line => line.Contains(row.TrimEnd(), StringComparison.Ordinal)));
        Assert.Contains(lines, line => line.Contains("438.4 Hz", StringComparison.Ordinal));
    }

    [Fact]
    public void Digits_are_of_one_size_and_three_of_them_fit_the_panel()
    {
        Assert.Equal(10, Enumerable.Range(0, 10).Select(digit => string.Join('\n', BigNumber.Lines(digit))).Distinct().Count());
        Assert.All(BigNumber.Lines(888), row => Assert.InRange(row.Length, 1, StatePanel.Width - 4));
        Assert.All(BigNumber.Lines(null), row => Assert.Equal("", row));
    }

    [Fact]
    public void On_a_terminal_with_colours_the_state_has_its_own()
    {
        Begin(JobStage.Sweep);
        _scene.Board.Show(_ => Statuses(BenchActivity.NeedsYou).Last());
        var screen = new Screen(ansi: true);

        screen.Console.Write(new LivePanel(screen.Console, _scene.Job, _scene.Board).Picture());

        Assert.Matches("\\x1b\\[[0-9;]*m *PLEASE LOOK", screen.Text);
    }

    private static LevelRead Read(long picofarads, double millivolts) => new()
    {
        Stage = JobStage.Sweep,
        Output = 65,
        Picofarads = picofarads,
        Millivolts = millivolts,
        RelativeNoise = 0.003,
        Samples = 3,
        Settled = true,
        Seconds = 1,
    };

    // What a status can hold at most, at least, and in between.
    private static IEnumerable<BenchStatus> Statuses(BenchActivity activity)
    {
        var bare = new BenchStatus { Activity = activity, Stage = JobStage.Sweep, Missing = [BenchInstrument.Meter, BenchInstrument.Fixture] };
        var named = bare with { Output = 65, ToneHertz = 1239.712, Next = 47, Message = new string('x', LivePanel.Width) };
        var read = named with { Readings = [Read(110_270, 1.981), Read(227_300, 1.58), Read(141_200, 4.492)] };
        var response = TunedResponse.Series(142_120, 7.9);
        var fit = new PeakFit(new(142_120), 80, 18_000, ResponseLaw.Series, new(response, Level.FromMillivolts(4.5), default), 0.01);
        return [bare, named, read, read with { Fit = fit }];
    }

    private void Begin(JobStage stage) => _scene.Begin(stage, [.. stage == JobStage.Survey
        ? _scene.Job.Profile.Outputs.Select(output => output.Number)
        : _scene.Job.Profile.FilteredOutputs.Select(output => output.Number)]);

    private int Height(BenchStatus status)
    {
        _scene.Board.Show(_ => status);
        return Lines().Length;
    }

    private string[] Lines()
    {
        var screen = new Screen();
        screen.Console.Profile.Width = LivePanel.Width;
        screen.Console.Write(new LivePanel(screen.Console, _scene.Job, _scene.Board).Picture());
        return screen.Lines;
    }
}
