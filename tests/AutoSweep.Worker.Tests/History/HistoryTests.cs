using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.History;

public sealed class HistoryTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Jobs_are_listed_by_age_with_their_stages_and_lumpiness()
    {
        Job("2026/second", _ => 0, null, new(2026, 5, 2, 9, 0, 0, TimeSpan.Zero));
        Job("2025/first", output => output % 4, output => 0.1 * (output % 4), new(2025, 5, 2, 9, 0, 0, TimeSpan.Zero));
        var shelf = JobShelf.Read(_folder.Path);
        Assert.Equal(["first", "second"], shelf.Jobs.Select(job => job.Name));
        var lines = Lines(screen => HistoryText.Write(screen.Console, shelf));
        Assert.Contains(lines, line => line.Contains("2025-05-02 │ first", StringComparison.Ordinal) && line.Contains("93/93", StringComparison.Ordinal)
            && line.Contains("1.48 -> 0.15", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith("2 jobs in ", StringComparison.Ordinal) && line.EndsWith(", 1 finished.", StringComparison.Ordinal));
        Assert.Empty(shelf.PassedOver);
    }

    [Fact]
    public void A_damaged_and_a_foreign_folder_are_told_and_passed_over()
    {
        Job("good", _ => 0);
        Job("damaged", _ => 0);
        var journal = _folder.File("damaged/journal.jsonl");
        var lines = File.ReadAllLines(journal);
        lines[4] = lines[4].Replace("0.021", "0.022", StringComparison.Ordinal);
        File.WriteAllLines(journal, lines);
        Directory.CreateDirectory(_folder.File("pictures/summer"));
        Directory.CreateDirectory(_folder.File("empty"));
        File.WriteAllText(_folder.File("empty/journal.jsonl"), "");
        var shelf = JobShelf.Read(_folder.Path);
        Assert.Equal(["good"], shelf.Jobs.Select(job => job.Name));
        Assert.Equal(["damaged", "empty", "pictures"], shelf.PassedOver.Select(one => Path.GetFileName(one.Folder)));
        Assert.Contains("line 5", shelf.PassedOver[0].Reason, StringComparison.Ordinal);
        Assert.Contains(Lines(screen => HistoryText.Write(screen.Console, shelf)), line => line.StartsWith("Passed over: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Reading_a_running_job_neither_takes_its_lock_nor_changes_a_byte()
    {
        Job("running", _ => 0);
        using var held = TargetChoice.Open(_folder.File("running"));
        var before = Directory.GetFiles(_folder.File("running")).ToDictionary(file => file, File.GetLastWriteTimeUtc);
        Assert.Single(JobShelf.Read(_folder.Path).Jobs);
        Assert.Equal(before, Directory.GetFiles(_folder.File("running")).ToDictionary(file => file, File.GetLastWriteTimeUtc));
        held.Append(new StageStarted(JobStage.Sweep, [49]));
    }

    [Fact]
    public void Two_jobs_are_compared_with_the_overall_gain_taken_out()
    {
        Job("a", _ => 0, output => 0.02 * (output % 3));
        Job("b", output => 2 - (output == 60 ? 3 : 0));
        using (var job = TargetChoice.Open(_folder.File("b")))
        {
            var output = job.Profile.FilteredOutputs.First().Number;
            job.Append(Some.Swept(output) with { PeakPicofarads = 110_000 });
        }

        var (first, second) = (JobShelf.Find("a", _folder.Path), JobShelf.Find(_folder.File("b"), null));
        var comparison = JobComparison.Of(first, second);
        Assert.Equal((CurveStand.AsLeft, CurveStand.AsFound), (comparison.FirstStand, comparison.SecondStand));
        Assert.Equal(2, comparison.GainDecibels, 1);
        Assert.Equal([60], comparison.Outputs.Where(output => output.IsLevelChanged).Select(output => output.Output));
        Assert.Equal([MadeJob.Generator.FilteredOutputs.First().Number], comparison.Outputs.Where(output => output.IsPeakChanged).Select(output => output.Output));
        // (110,000 - 104,567) / 104,567.
        Assert.Equal(5.196, comparison.Outputs.Single(output => output.IsPeakChanged).PeakPercent!.Value, 2);
        var lines = Lines(screen => HistoryText.Write(screen.Console, first, second, comparison, all: false));
        Assert.Contains(lines, line => line.Contains("changed: 1 levels, 1 peaks.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_shops_curve_is_drawn_from_finished_jobs_and_chosen_for_a_new_one()
    {
        for (var job = 0; job < 4; job++)
            Job($"done{job}", _ => 0, output => job + (output >= 80 ? -1.5 : 0) + (output == 10 + job ? 6 : 0));
        Job("unfinished", _ => 7);
        Job("new", _ => 0);
        Assert.Equal(JobOutcome.Success, await RunAsync("target", _folder.File("shop.csv"), "--jobs", _folder.Path, "--choose-for", _folder.File("new")));
        var target = TargetCurve.Of(JobReading.Read(_folder.File("new")).State);
        Assert.StartsWith("4 finished jobs: done0, done1", target.Source, StringComparison.Ordinal);
        var profile = TargetCurve.Of(MadeJob.Generator).Points;
        var off = target.Points.Zip(profile, (drawn, own) => 20 * Math.Log10(drawn.Millivolts / own.Millivolts)).ToList();
        Assert.All(off, (decibels, index) => Assert.Equal(index < 79 ? off[0] : off[0] - 1.5, decibels, 2));
        Assert.Equal(
            target.Points.Select(point => Math.Round(point.Millivolts, 6)),
            new CurveCsvReader(MadeJob.Generator).Read(File.ReadAllText(_folder.File("shop.csv"))).Points.Select(point => point.Millivolts));
    }

    [Fact]
    public void Finished_jobs_of_two_kinds_of_generator_need_a_name()
    {
        Job("one", _ => 0, _ => 0);
        Job("other", _ => 0, _ => 0, profile: Some.Profile);
        var shelf = JobShelf.Read(_folder.Path);
        var fault = Assert.Throws<BenchFaultException>(() => FinishedJobs.Draw(shelf, null, "", 1));
        Assert.Contains("2 kinds", fault.Found, StringComparison.Ordinal);
        Assert.Equal(14, FinishedJobs.Draw(shelf, Some.Profile.Name, "", 1).Points.Count);
    }

    [Fact]
    public async Task Folders_that_are_not_there_and_shelves_without_finished_jobs_are_refused()
    {
        Job("begun", _ => 0);
        Assert.Equal(3, await RunAsync("list", "--jobs", _folder.File("nowhere")));
        Assert.Equal(3, await RunAsync("compare", "begun", "nothing", "--jobs", _folder.Path));
        Assert.Equal(3, await RunAsync("target", "--jobs", _folder.Path));
        Assert.Equal(JobOutcome.Success, await RunAsync("list", "--jobs", _folder.Path));
        Assert.Equal(JobOutcome.Success, await RunAsync("compare", "begun", "begun", "--jobs", _folder.Path));
        Assert.Equal(JobOutcome.Success, await RunAsync("drift", "--stock", _folder.Path));
    }

    private void Job(
        string name, Func<int, double> asFound, Func<int, double>? asLeft = null, DateTimeOffset? opened = null, GeneratorProfile? profile = null)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_folder.File(name))!);
        MadeJob.Write(_folder.File(name), asFound, asLeft, opened, profile);
    }

    private static string[] Lines(Action<Screen> write)
    {
        var screen = new Screen();
        screen.Console.Profile.Width = 160;
        write(screen);
        return screen.Lines;
    }

    private static Task<int> RunAsync(params string[] arguments) => RootCommandLine.RunAsync(["history", .. arguments]);
}
