using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Curves;

public sealed class CurveCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Job => _folder.File("job");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task An_imported_curve_is_journalled_whole_and_undo_brings_the_earlier_one_back()
    {
        MadeJob.Write(Job, _ => 0);
        File.WriteAllText(_folder.File("mine.csv"), "output;level_mv;tolerance_db\n1;4,5;0,5\n2;4;\n");
        Assert.Equal(JobOutcome.Success, await RunAsync("import", _folder.File("mine.csv"), "--job", Job));
        Assert.Equal([new(1, 4.5, 0.5), new(2, 4, 1)], Target().Points);
        Assert.Equal("mine", Target().Name);

        Assert.Equal(JobOutcome.Success, await RunAsync("edit", "2", "--level-mv", "4.2", "--job", Job));
        Assert.Equal(new TargetPoint(2, 4.2, 1), Target().Points[1]);
        Assert.EndsWith(", edited", Target().Source, StringComparison.Ordinal);

        Assert.Equal(JobOutcome.Success, await RunAsync("undo", "--job", Job));
        Assert.Equal(new TargetPoint(2, 4, 1), Target().Points[1]);
        Assert.Equal(JobOutcome.Success, await RunAsync("undo", "--job", Job));
        Assert.Equal(TargetCurve.Of(MadeJob.Generator).Points, Target().Points);
        Assert.Equal(3, await RunAsync("undo", "--job", Job));
        var events = JournalFile.Read(Journal).Entries.Select(entry => entry.Event).ToList();
        Assert.Equal((2, 2), (events.OfType<TargetChosen>().Count(), events.OfType<EntryWithdrawn>().Count()));
    }

    [Fact]
    public async Task A_bad_file_changes_nothing()
    {
        MadeJob.Write(Job, _ => 0);
        var before = File.ReadAllBytes(Journal);
        File.WriteAllText(_folder.File("bad.csv"), "output,level_mv\n1,4,5\n");
        Assert.Equal(3, await RunAsync("import", _folder.File("bad.csv"), "--job", Job));
        Assert.Equal(3, await RunAsync("import", _folder.File("none.csv"), "--job", Job));
        Assert.Equal(3, await RunAsync("edit", "999", "--no-target", "--job", Job));
        Assert.Equal(3, await RunAsync("edit", "5", "--job", Job));
        Assert.Equal(JobOutcome.BadUsage, await RunAsync("edit", "5", "--level-mv", "0", "--job", Job));
        Assert.Equal(before, File.ReadAllBytes(Journal));
    }

    [Fact]
    public async Task A_mistyped_job_folder_is_refused_and_not_made()
    {
        Assert.Equal(3, await RunAsync("undo", "--job", _folder.File("nothing")));
        Assert.Equal(3, await RunAsync("show", "--job", _folder.File("nothing")));
        Assert.False(Directory.Exists(_folder.File("nothing")));
    }

    [Fact]
    public async Task What_is_exported_can_be_imported_into_another_job()
    {
        MadeJob.Write(Job, output => output % 3, output => output % 2);
        MadeJob.Write(_folder.File("other"), _ => 0);
        Assert.Equal(JobOutcome.Success, await RunAsync("export", _folder.File("left.csv"), "--stand", "AsLeft", "--job", Job));
        Assert.Equal(JobOutcome.Success, await RunAsync("import", _folder.File("left.csv"), "--job", _folder.File("other")));
        Assert.Equal(
            LevelCurve.Of(JobReading.Read(Job).State, CurveStand.AsLeft).Points.Select(point => Math.Round(point.Millivolts, 6)),
            TargetCurve.Of(JobReading.Read(_folder.File("other")).State).Points.Select(point => point.Millivolts));
    }

    [Fact]
    public void The_text_names_what_is_off_and_sums_each_stand_up()
    {
        MadeJob.Write(Job, output => (output % 3) - 1, output => 5 + (output == 20 ? -6 : 0.1 * (output % 2)));
        var screen = new Screen();
        screen.Console.Profile.Width = 140;
        new CurveText(JobReading.Read(Job).State).Write(screen.Console, onlyOff: false);
        Assert.Contains(screen.Lines, line => line.Contains("│ 20 ", StringComparison.Ordinal) && line.Contains("too soft; outlier:", StringComparison.Ordinal));
        Assert.Contains(screen.Lines, line => line.StartsWith("as left: 93 outputs, 92 within tolerance, 0 too loud, 1 too soft", StringComparison.Ordinal));
        Assert.Contains(screen.Lines, line => line.StartsWith("as left: overall +5.1 dB over the target; lumpiness 0.1", StringComparison.Ordinal));
        Assert.Contains(screen.Lines, line => line.StartsWith("as found: 93 outputs", StringComparison.Ordinal));
        Assert.DoesNotContain('\u001b', screen.Text);
    }

    [Fact]
    public void A_running_job_can_be_looked_at()
    {
        MadeJob.Write(Job, _ => 0);
        using var held = TargetChoice.Open(Job);
        Assert.Equal(93, JobReading.Read(Job).State.Surveyed.Count);
    }

    private string Journal => Path.Combine(Job, "journal.jsonl");

    private TargetCurve Target() => TargetCurve.Of(JobReading.Read(Job).State);

    private static Task<int> RunAsync(params string[] arguments) => RootCommandLine.RunAsync(["curve", .. arguments]);
}
