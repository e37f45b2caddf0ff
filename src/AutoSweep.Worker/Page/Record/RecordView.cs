using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Record;

/// <summary>What the page of the record shows of a job.</summary>
/// <param name="Job">The job's name.</param>
/// <param name="Findings">What the readings say, each fault once with all its outputs, in the order of the faults.</param>
/// <param name="Noticed">What the survey noticed at outputs, each kind once.</param>
/// <param name="NotDone">What was not done, a sentence each.</param>
/// <param name="Files">The job's files.</param>
public sealed record RecordView(
    string Job, IReadOnlyList<IGrouping<GeneratorFault, Finding>> Findings, IReadOnlyList<(string Words, IReadOnlyList<int> Outputs)> Noticed,
    IReadOnlyList<string> NotDone, IReadOnlyList<RecordFile> Files)
{
    /// <summary>Reads a job and works it out; reads files, so never on a screen's own turn.</summary>
    /// <exception cref="Core.BenchFaultException">The job or its ledger cannot be read.</exception>
    public static RecordView Read(string folder, DeskOptions options, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(options);
        var job = JobReading.Read(folder);
        return Of(job, JobLedger.Find(job, options.Ledger, clock)?.Read() ?? StockState.Empty);
    }

    /// <summary>Works it out.</summary>
    public static RecordView Of(JobReading job, StockState stock)
    {
        ArgumentNullException.ThrowIfNull(job);
        var findings = Diagnose.Of(job.State, OldCapacitors.Of(stock, job.State));
        return new(
            job.Name, [.. findings.GroupBy(finding => finding.Fault).OrderBy(fault => fault.Key)], NoticedBy(job), ReportGaps.Of(job.State, stock),
            RecordFile.In(job.Folder));
    }

    private static List<(string, IReadOnlyList<int>)> NoticedBy(JobReading job) =>
        [.. job.State.Surveyed.Values.SelectMany(one => one.Flags.Select(flag => (Flag: flag, one.Output)))
            .GroupBy(one => one.Flag).OrderBy(group => group.Key)
            .Select(group => (FindingWords.Of(group.Key), (IReadOnlyList<int>)[.. group.Select(one => one.Output)]))];
}
