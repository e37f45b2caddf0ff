using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Keeps what is logged at information or above.</summary>
public sealed class LogLines : ILogger
{
    private readonly Lock _lock = new();
    private readonly List<string> _lines = [];

    public IReadOnlyList<string> Lines
    {
        get
        {
            lock (_lock)
                return [.. _lines];
        }
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

    public void Log<TState>(
        LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (!IsEnabled(logLevel))
            return;
        lock (_lock)
            _lines.Add($"{logLevel}: {formatter(state, exception)}");
    }
}
