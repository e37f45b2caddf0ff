using Microsoft.Extensions.Hosting;

namespace AutoSweep.Worker.Page.Work;

/// <summary>The life of one piece of work: when it ends, the page's own host goes on.</summary>
internal sealed class WorkLifetime : IHostApplicationLifetime
{
    /// <inheritdoc/>
    public CancellationToken ApplicationStarted => CancellationToken.None;

    /// <inheritdoc/>
    public CancellationToken ApplicationStopping => CancellationToken.None;

    /// <inheritdoc/>
    public CancellationToken ApplicationStopped => CancellationToken.None;

    /// <summary>The work's own task has ended; nothing else is to be stopped.</summary>
    public void StopApplication()
    {
    }
}
