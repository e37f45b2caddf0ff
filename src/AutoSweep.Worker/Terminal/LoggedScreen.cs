using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Terminal;

/// <summary>The screen of a service: nobody sits before it, so it goes to the service manager's log, a line an event.</summary>
/// <param name="log">The log.</param>
/// <param name="record">The job.</param>
/// <param name="board">The bench's status.</param>
public sealed class LoggedScreen(ILogger<LoggedScreen> log, JobRecord record, BenchBoard board) : IBenchScreen
{
    private string? _said;

    /// <inheritdoc/>
    public async Task ShowAsync(CancellationToken closing)
    {
        record.Appended += Print;
        board.Changed += Say;
        var closed = new TaskCompletionSource();
        await using (closing.Register(closed.SetResult))
            await closed.Task;
        record.Appended -= Print;
        board.Changed -= Say;
    }

    private void Print(JournalEntry entry)
    {
        if (LinePrinter.Line(entry.Event) is { } line)
            log.LogInformation("{Line}", line.Trim());
    }

    private void Say(BenchStatus status)
    {
        if (status.Message is { } message && message != _said)
            log.Log(status.Activity is BenchActivity.NeedsYou or BenchActivity.Paused ? LogLevel.Warning : LogLevel.Information, "{Message}", message);
        _said = status.Message;
    }
}
