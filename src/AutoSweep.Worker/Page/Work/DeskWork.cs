using AutoSweep.Core;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.Work;

/// <summary>One piece of work at the bench that screens watch: a stage, parts coming in, parts going into outputs, a check of the wires.</summary>
/// <remarks>It goes on whether a screen is open or not.</remarks>
public abstract class DeskWork : IAsyncDisposable
{
    private readonly CancellationTokenSource _stopping = new();
    private Task _running = Task.CompletedTask;

    /// <summary>Prepares the work; nothing happens before <see cref="Start"/>.</summary>
    protected DeskWork()
    {
        Board.Changed += _ => Tell();
        Dialogue.Changed += Tell;
    }

    /// <summary>Raised when anything that screens show of it may have changed; a listener must not block.</summary>
    public event Action? Changed;

    /// <summary>What it is, in a word or two for a heading.</summary>
    public abstract string Name { get; }

    /// <summary>The page that it is worked at; none for work that the bench screen itself shows.</summary>
    public virtual string? Place => null;

    /// <summary>Its one big state.</summary>
    public BenchBoard Board { get; } = new();

    /// <summary>What it asks and tells.</summary>
    public PageDialogue Dialogue { get; } = new();

    /// <summary>How far it is.</summary>
    public WorkProgress Progress { get; private set; } = WorkProgress.GoingOn;

    /// <summary>What stopped it; none unless it failed.</summary>
    public Exception? Fault { get; private set; }

    /// <summary>Begins.</summary>
    public void Start() => _running = Task.Run(RunAsync);

    /// <summary>Stops it and waits until relays are open and links are closed.</summary>
    public async Task StopAsync()
    {
        await _stopping.CancelAsync();
        await _running;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _stopping.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>Does the work.</summary>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="BenchFaultException">The bench is broken.</exception>
    /// <exception cref="OperationCanceledException">The person stopped it.</exception>
    protected abstract Task WorkAsync(CancellationToken cancellationToken);

    /// <summary>Tells the screens that something has changed.</summary>
    protected void Tell() => Changed?.Invoke();

    private async Task RunAsync()
    {
        try
        {
            await WorkAsync(_stopping.Token);
            Progress = WorkProgress.Done;
        }
        catch (OperationCanceledException)
        {
            Progress = WorkProgress.Stopped;
        }
        catch (Exception fault)
        {
            // A fault that nobody foresaw is shown as well: a page that goes quiet tells the person nothing.
            Fault = fault;
            Progress = WorkProgress.Failed; // last: a screen that sees it looks for the fault
            Board.Sound(BenchSound.Question);
        }

        Tell();
    }
}
