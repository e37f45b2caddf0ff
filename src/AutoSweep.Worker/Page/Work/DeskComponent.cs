using AutoSweep.Worker.Page.Guard;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Page.Work;

/// <summary>A part of a page that shows the desk and is drawn anew when the desk changes.</summary>
public abstract class DeskComponent : ComponentBase, IDisposable
{
    // A reading changes the journal, then the search's fit, then the big state, all within a few milliseconds: drawn once. An eye sees no delay below 50 ms
    // or so (common practice, no source).
    private static readonly TimeSpan Together = TimeSpan.FromMilliseconds(25);

    private int _pending;

    /// <summary>The desk.</summary>
    [Inject]
    protected Desk Desk { get; set; } = null!;

    /// <summary>What this screen may do.</summary>
    [Inject]
    protected ScreenRights Rights { get; set; } = null!;

    /// <summary>What went wrong with what the person did last; none when it worked. Shown by <c>FaultCard</c>.</summary>
    protected Exception? Fault { get; set; }

    /// <inheritdoc/>
    protected override void OnInitialized() => Desk.Changed += Redraw;

    /// <summary>Does what a person asked for on this screen, if it holds the controls; a fault is shown, and nothing is lost.</summary>
    /// <param name="act">The act.</param>
    protected async Task ActAsync(Func<Task> act)
    {
        Fault = null;
        try
        {
            Rights.Require();
            await act();
        }
        catch (Exception fault)
        {
            // Whatever it is, the person at the bench is told, and the screen stays alive.
            Fault = fault;
            Desk.Logs.CreateLogger(GetType()).LogWarning(fault, "An act on the page failed");
        }
    }

    /// <summary>Does what a person asked for on this screen, as <see cref="ActAsync(Func{Task})"/>.</summary>
    /// <param name="act">The act.</param>
    protected Task ActAsync(Action act) => ActAsync(() =>
    {
        act();
        return Task.CompletedTask;
    });

    /// <summary>Draws anew on the screen's own turn; changes that come faster than they are drawn are drawn together.</summary>
    protected void Redraw()
    {
        if (Interlocked.Exchange(ref _pending, 1) == 0)
            _ = RedrawSoonAsync();
    }

    private async Task RedrawSoonAsync()
    {
        await Task.Delay(Together, Desk.Clock);
        await InvokeAsync(() =>
        {
            Interlocked.Exchange(ref _pending, 0);
            StateHasChanged();
        });
    }

    /// <inheritdoc/>
    public virtual void Dispose()
    {
        Desk.Changed -= Redraw;
        GC.SuppressFinalize(this);
    }
}
