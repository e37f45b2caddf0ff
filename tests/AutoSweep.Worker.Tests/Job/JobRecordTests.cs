using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Job;

public sealed class JobRecordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void An_event_is_on_disk_before_anyone_hears_of_it()
    {
        using var job = Some.Job(_folder);
        var onDisk = 0;
        job.Appended += entry => onDisk = JournalFile.Read(job.Folder.Journal).Entries.Count;

        job.Append(new StageStarted(JobStage.Sweep, [9]));

        Assert.Equal(2, onDisk);
    }

    [Fact]
    public void A_resumed_job_knows_what_the_first_sitting_knew()
    {
        using (var job = Some.Job(_folder))
        {
            job.Append(new StageStarted(JobStage.Sweep, [9, 10]));
            job.Append(Some.Swept(9));
        }

        using var resumed = Resume();

        Assert.Equal([10], resumed.State.Missing(JobStage.Sweep));
        Assert.Equal(Some.Profile.Name, resumed.Profile.Name);
        Assert.Equal(4, resumed.Append(Some.Swept(10)).Sequence);
    }

    [Fact]
    public void A_torn_last_line_is_cut_off_and_written_over()
    {
        using (var job = Some.Job(_folder))
            job.Append(new StageStarted(JobStage.Sweep, [9]));
        File.AppendAllText(_folder.File("journal.jsonl"), "{\"sequence\":3,\"at\":\"2026");

        using (var resumed = Resume())
            resumed.Append(Some.Swept(9));

        var text = JournalFile.Read(_folder.File("journal.jsonl"));
        Assert.Equal([1, 2, 3], text.Entries.Select(entry => entry.Sequence));
        Assert.False(text.TornTail);
    }

    [Fact]
    public void A_damaged_line_in_the_middle_is_named_and_nothing_is_changed()
    {
        var before = Damage(line: 3);

        var fault = Assert.Throws<BenchFaultException>(() => Resume());

        Assert.Equal(BenchFault.JournalDamaged, fault.Kind);
        Assert.Contains("line 3", fault.Found, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(_folder.File("journal.jsonl")));
    }

    [Fact]
    public void Damaged_lines_set_aside_leave_the_rest_in_force_and_the_old_file_as_it_was()
    {
        var before = Damage(line: 3);

        using var resumed = Resume(setAside: true);

        Assert.Equal([9], resumed.State.Missing(JobStage.Sweep));
        Assert.True(resumed.State.IsDone(JobStage.Sweep, 10));
        Assert.Equal(before, File.ReadAllText(Assert.Single(Directory.GetFiles(_folder.Path, "*.damaged-*"))));
        Assert.Empty(JournalFile.Read(resumed.Folder.Journal).Damaged);
    }

    [Fact]
    public void An_undo_still_points_at_its_entry_after_lines_were_set_aside()
    {
        using (var job = Some.Job(_folder))
        {
            job.Append(new StageStarted(JobStage.Sweep, [9, 10, 11]));
            job.Append(Some.Swept(9));
            job.Append(new EntryWithdrawn(job.Append(Some.Swept(10)).Sequence));
            job.Append(Some.Swept(11));
        }

        Spoil(3);
        using var resumed = Resume(setAside: true);

        Assert.Equal([9, 10], resumed.State.Missing(JobStage.Sweep));
    }

    [Fact]
    public void A_second_program_in_the_folder_is_refused()
    {
        using var job = Some.Job(_folder);

        var fault = Assert.Throws<BenchFaultException>(() => JobFolder.Open(_folder.Path));

        Assert.Equal(BenchFault.JobInUse, fault.Kind);
    }

    [Fact]
    public void A_new_job_never_writes_over_an_old_one()
    {
        Some.Job(_folder).Dispose();
        using var folder = JobFolder.Open(_folder.Path);

        var fault = Assert.Throws<BenchFaultException>(() => JobRecord.Begin(folder, Some.Profile, "test", TimeProvider.System));

        Assert.Contains("--resume", fault.AtTerminal, StringComparison.Ordinal);
    }

    [Fact]
    public void Resuming_where_there_is_no_job_says_so()
    {
        Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(() => Resume()).Kind);
    }

    public void Dispose() => _folder.Dispose();

    private JobRecord Resume(bool setAside = false)
    {
        var folder = JobFolder.Open(_folder.Path);
        try
        {
            return JobRecord.Resume(folder, setAside, TimeProvider.System);
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    private string Damage(int line)
    {
        using (var job = Some.Job(_folder))
        {
            job.Append(new StageStarted(JobStage.Sweep, [9, 10]));
            job.Append(Some.Swept(9));
            job.Append(Some.Swept(10));
        }

        return Spoil(line);
    }

    private string Spoil(int line)
    {
        var lines = File.ReadAllLines(_folder.File("journal.jsonl"));
        lines[line - 1] = lines[line - 1].Replace("740", "741", StringComparison.Ordinal);
        File.WriteAllText(_folder.File("journal.jsonl"), string.Join('\n', lines) + "\n");
        return File.ReadAllText(_folder.File("journal.jsonl"));
    }
}
