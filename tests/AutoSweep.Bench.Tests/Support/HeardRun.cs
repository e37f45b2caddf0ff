using System.Diagnostics;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A run of the worker that is listened to while it goes on: a test acts when it has been told, not after so many seconds.</summary>
internal sealed class HeardRun : IDisposable
{
    private readonly Process _process;
    private readonly Task<string> _errors;
    private readonly Task _reading;
    private readonly HeardLines _heard = new();

    public HeardRun(Process process)
    {
        _process = process;
        _errors = process.StandardError.ReadToEndAsync();
        _reading = ReadAsync();
    }

    /// <summary>Starts the worker.</summary>
    public static HeardRun Worker(params IEnumerable<string> arguments) => new(Programs.Start(Programs.Worker, arguments));

    /// <summary>Waits until it has said this, if it has not yet; its end without it is a failure. Where its lines break does not matter.</summary>
    public async Task SaysAsync(string part)
    {
        using var limit = new CancellationTokenSource(Run.Longest, TimeProvider.System);
        while (true)
        {
            var (said, more) = Said();
            if (Words(said).Contains(part, StringComparison.Ordinal))
                return;
            if (_reading.IsCompleted && said == Said().Text)
                Assert.Fail($"It ended before it said \"{part}\":\n{said}\n{await _errors}");
            await Task.WhenAny(more, _reading).WaitAsync(limit.Token);
        }
    }

    /// <summary>Stops it where it is, in the middle of whatever it does.</summary>
    public async Task FreezeAsync()
    {
        await SignalAsync("-STOP");
        using var limit = new CancellationTokenSource(Run.Longest, TimeProvider.System);
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(1), TimeProvider.System);
        while (!_process.HasExited && !IsStopped())
            await timer.WaitForNextTickAsync(limit.Token);
    }

    /// <summary>Lets it go on.</summary>
    public Task ThawAsync() => SignalAsync("-CONT");

    /// <summary>Whether it has ended.</summary>
    public bool HasEnded => _process.HasExited;

    /// <summary>Waits for its end.</summary>
    public async Task<Run> EndAsync()
    {
        _process.StandardInput.Close();
        using var limit = new CancellationTokenSource(Run.Longest, TimeProvider.System);
        try
        {
            await _process.WaitForExitAsync(limit.Token);
            await _reading;
            return new(_process.ExitCode, Said().Text, (await _errors).ReplaceLineEndings(" "));
        }
        catch (OperationCanceledException)
        {
            throw new TimeoutException($"It had not ended after {Run.Longest.TotalMinutes:0} minutes.\n{Said().Text}");
        }
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }

    /// <summary>The words, where their lines break left out: that is the width of a terminal's doing.</summary>
    public static string Words(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private (string Text, Task More) Said()
    {
        var (lines, more) = _heard.Look();
        return (string.Concat(lines.Select(line => line + "\n")), more);
    }

    private async Task ReadAsync()
    {
        while (await _process.StandardOutput.ReadLineAsync() is { } line)
            _heard.Add(line);
    }

    // The third word after the name in brackets (proc(5)).
    private bool IsStopped()
    {
        var stat = File.ReadAllText($"/proc/{_process.Id}/stat");
        return stat[stat.LastIndexOf(')')..].Split(' ')[1] == "T";
    }

    private async Task SignalAsync(string signal)
    {
        using var kill = Process.Start("/bin/kill", [signal, $"{_process.Id}"]);
        await kill.WaitForExitAsync();
    }
}
