using AutoSweep.Worker.Bench;
using Microsoft.Extensions.Hosting;

namespace AutoSweep.Worker.Service;

/// <summary>Holds the host's start back until the bench is connected, or is being waited for: only then is readiness told.</summary>
/// <param name="board">What the worker shows.</param>
public sealed class BenchReadiness(BenchBoard board) : IHostedService
{
    /// <inheritdoc/>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var ready = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        board.Changed += Look;
        Look(board.Status);
        try
        {
            await ready.Task.WaitAsync(cancellationToken);
        }
        finally
        {
            board.Changed -= Look;
        }

        void Look(BenchStatus status)
        {
            if (status.Activity != BenchActivity.Connecting)
                ready.TrySetResult();
        }
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
