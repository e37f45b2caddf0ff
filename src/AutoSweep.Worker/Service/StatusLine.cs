using AutoSweep.Worker.Bench;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;

namespace AutoSweep.Worker.Service;

/// <summary>Keeps the line that <c>systemctl status</c> shows current: what the bench does, or what it lacks.</summary>
/// <param name="board">What the worker shows.</param>
/// <param name="notifier">Tells systemd; none under another manager.</param>
public sealed class StatusLine(BenchBoard board, ISystemdNotifier? notifier = null) : IHostedService
{
    private string? _told;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        board.Changed += Tell;
        Tell(board.Status);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken)
    {
        board.Changed -= Tell;
        return Task.CompletedTask;
    }

    private void Tell(BenchStatus status)
    {
        var line = (status.Message ?? status.Activity.ToString()).ReplaceLineEndings(" ");
        if (line != _told)
            notifier?.Notify(new ServiceState("STATUS=" + line));
        _told = line;
    }
}
