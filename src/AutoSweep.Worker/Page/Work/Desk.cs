using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Page.Work;

/// <summary>What lies on the bench: at most one job, and at most one piece of work that goes on with it. Every screen looks at the same desk.</summary>
/// <remarks>Safe from several threads. The job's truth is its journal; the desk keeps nothing that must last, but the name of the last job.</remarks>
/// <param name="options">Where things are.</param>
/// <param name="logs">The log.</param>
/// <param name="clock">The wall clock.</param>
public sealed class Desk(DeskOptions options, ILoggerFactory logs, TimeProvider clock) : IAsyncDisposable
{
    private readonly SemaphoreSlim _gate = new(1, 1);

    /// <summary>Raised when anything that screens show may have changed; a listener must not block.</summary>
    public event Action? Changed;

    /// <summary>Raised when a sound should be heard.</summary>
    public event Action<BenchSound>? Sounded;

    /// <summary>Where things are.</summary>
    public DeskOptions Options => options;

    /// <summary>The wall clock.</summary>
    public TimeProvider Clock => clock;

    /// <summary>The log.</summary>
    public ILoggerFactory Logs => logs;

    /// <summary>The open job; none before one is chosen.</summary>
    public JobRecord? Job { get; private set; }

    /// <summary>What the shop calls it.</summary>
    public string? NameOfJob => Job is { } job ? Path.GetFileName(job.Folder.Path) : null;

    /// <summary>Why the last job is not on the bench again; none where it is, or another one is by now.</summary>
    public BenchFaultException? NotOpened { get; private set; }

    /// <summary>The work that goes on, or ended last.</summary>
    public DeskWork? Work { get; private set; }

    /// <summary>Whether work goes on.</summary>
    public bool IsBusy => Work?.Progress == WorkProgress.GoingOn;

    /// <summary>The stock.</summary>
    public StockLedger Ledger => new(options.Ledger, clock);

    /// <summary>How the bench is wired; none before it was written down.</summary>
    /// <exception cref="BenchFaultException">bench.json cannot be used.</exception>
    public BenchWiring? Wiring => File.Exists(options.Wiring) ? BenchWiringFile.Read(options.Wiring) : null;

    /// <summary>Tells one version of bench.json from another without reading it; no bytes where there is none.</summary>
    public (DateTime At, long Bytes) WiringStamp => new FileInfo(options.Wiring) is { Exists: true } file ? (file.LastWriteTimeUtc, file.Length) : default;

    /// <summary>Begins a new job and puts it on the bench.</summary>
    /// <exception cref="BenchFaultException">The name is no name, the folder holds a job, or work goes on.</exception>
    public Task BeginAsync(string name, GeneratorProfile profile) =>
        ChangeJobAsync(name, folder => JobRecord.Begin(folder, profile, Software.NameAndVersion, clock));

    /// <summary>Puts a job that has begun on the bench.</summary>
    /// <exception cref="BenchFaultException">No such job, in use elsewhere, damaged, or work goes on.</exception>
    public Task OpenAsync(string name) => ChangeJobAsync(name, folder => JobRecord.Resume(folder, setAsideDamage: false, clock));

    /// <summary>Puts the last job on the bench again, as after a restart; does nothing where there is none.</summary>
    /// <remarks>One that cannot be opened, damaged or in use, is told and left alone: the page opens all the same, or nobody could choose another.</remarks>
    public async Task OpenLastAsync()
    {
        if (!File.Exists(options.LastJob))
            return;
        try
        {
            var name = JobName.Require(await File.ReadAllTextAsync(options.LastJob));
            if (Directory.Exists(Path.Combine(options.Jobs, name)))
                await OpenAsync(name);
        }
        catch (BenchFaultException fault)
        {
            NotOpened = fault;
        }
    }

    /// <summary>Starts work.</summary>
    /// <exception cref="BenchFaultException">Other work goes on.</exception>
    public async Task StartAsync(DeskWork work)
    {
        await _gate.WaitAsync();
        try
        {
            RequireIdle();
            if (Work is { } before)
                await before.DisposeAsync();
            Work = work;
            work.Changed += Tell;
            work.Board.Sounded += sound => Sounded?.Invoke(sound);
            work.Start();
        }
        finally
        {
            _gate.Release();
        }

        Tell();
    }

    /// <summary>A stage of the job at the generator.</summary>
    /// <exception cref="BenchFaultException">No job, no wiring, or other work goes on.</exception>
    public Task StartAsync(JobStage stage, bool handsFree, Levelling.LevellingOptions? levelling = null)
    {
        var plan = new JobPlan
        {
            Wiring = RequireWiring(), Stages = [stage], HandsFree = handsFree, ClockRate = options.ClockRate, Levelling = levelling ?? new(),
        };
        return StartAsync(new StageWork(plan, RequireJob(), logs, clock));
    }

    /// <summary>Stops the work that goes on; nothing recorded is lost.</summary>
    public async Task StopAsync()
    {
        if (Work is { } work)
            await work.StopAsync();
        Tell();
    }

    /// <summary>The open job.</summary>
    /// <exception cref="BenchFaultException">There is none.</exception>
    public JobRecord RequireJob() => Job ?? throw new BenchFaultException(
        BenchFault.StageNotReady, "no job is on the bench", "an open job", "begin a new one, or go on with one of the list");

    /// <summary>Makes sure that no work goes on.</summary>
    /// <exception cref="BenchFaultException">It does.</exception>
    public void RequireIdle()
    {
        if (IsBusy)
            throw new BenchFaultException(BenchFault.StageNotReady, $"{Work!.Name} goes on", "a bench at rest", "wait until it is done, or stop it first");
    }

    /// <summary>How the bench is wired.</summary>
    /// <exception cref="BenchFaultException">It was not written down, or cannot be used.</exception>
    public BenchWiring RequireWiring() => Wiring ?? throw new BenchFaultException(
        BenchFault.BadFile, $"no {options.Wiring}", "the wiring of this bench", "say on the page Wiring what stands on the bench");

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (Work is { } work)
            await work.DisposeAsync();
        Job?.Dispose();
        _gate.Dispose();
    }

    /// <summary>Tells the screens that something has changed.</summary>
    public void Tell() => Changed?.Invoke();

    private async Task ChangeJobAsync(string name, Func<JobFolder, JobRecord> open)
    {
        var known = JobName.Require(name);
        await _gate.WaitAsync();
        try
        {
            RequireIdle();
            if (known == NameOfJob)
                return;
            var folder = JobFolder.Open(Path.Combine(options.Jobs, known));
            JobRecord next;
            try
            {
                next = open(folder);
            }
            catch
            {
                folder.Dispose();
                throw;
            }

            Job?.Dispose();
            (Job, Work, NotOpened) = (next, null, null);
            next.Appended += _ => Tell();
            WholeFile.Replace(options.LastJob, known);
        }
        finally
        {
            _gate.Release();
        }

        Tell();
    }

}
