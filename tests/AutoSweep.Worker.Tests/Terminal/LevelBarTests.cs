using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Terminal;

public sealed class LevelBarTests : IDisposable
{
    private readonly BenchScene _scene = new(profile: GeneratorProfileLibrary.Open("invented-quillmark-93-60hz"));

    [Fact]
    public void The_panel_says_which_magnet_goes_which_way_and_how_far()
    {
        Show(2.3, new(MoveDirection.Out, 0.11, 0.02));

        Assert.Contains("MAGNET OUT 0.110 mm", Text(), StringComparison.Ordinal);
        Assert.Contains("+2.3 dB, band ±0.25 dB", Text(), StringComparison.Ordinal);
        Assert.All(Lines(), line => Assert.InRange(line.Length, 0, LivePanel.Width));
        Assert.InRange(Lines().Length, 20, LivePanel.Height);
    }

    [Theory]
    [InlineData(-5.5, 2)]
    [InlineData(0, 24)]
    [InlineData(30, 47)]
    public void The_bar_reaches_from_the_middle_to_the_level(double decibels, int column)
    {
        Show(decibels, new(MoveDirection.In, 0.1));

        var bar = Lines().Single(line => line.Contains("too soft", StringComparison.Ordinal) && line.Contains("too loud", StringComparison.Ordinal));
        var row = Lines()[Array.IndexOf(Lines(), bar) - 3];
        var inner = row[^(PlotBox.Columns + 1)..^1];
        Assert.Equal('█', inner[Math.Clamp(column, 0, PlotBox.Columns - 1)]);
        Assert.InRange(inner.Count(sign => sign == '█'), 1, 25);
    }

    public void Dispose() => _scene.Dispose();

    private void Show(double decibels, MagnetMove order)
    {
        if (!_scene.Job.State.Planned.ContainsKey(JobStage.Level))
            _scene.Begin(JobStage.Level, 61, 62);
        _scene.Board.Show(_ => new() { Activity = BenchActivity.Moving, Stage = JobStage.Level, Output = 61, ToneHertz = 1046.2,
            Levelling = new(decibels, 0.25, order) });
    }

    private string Text() => string.Join('\n', Lines());

    private string[] Lines()
    {
        var screen = new Screen();
        screen.Console.Profile.Width = LivePanel.Width;
        screen.Console.Write(new LivePanel(screen.Console, _scene.Job, _scene.Board).Picture());
        return screen.Lines;
    }
}
