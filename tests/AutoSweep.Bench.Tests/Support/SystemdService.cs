using System.Diagnostics;
using System.Globalization;
using System.Threading.Channels;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>The worker as systemd starts it: a parent of systemd's name, its environment, and a notify socket.</summary>
internal sealed class SystemdService : IDisposable
{
    // systemd.exec(5), "Environment Variables in Spawned Processes". Its number is that of the service's own process, told before it becomes the worker.
    private const string Line = """
        export INVOCATION_ID=3f1c0d9e5b7a4c2d8e6f0a1b2c3d4e5f NOTIFY_SOCKET="$1"; shift
        (echo $BASHPID; export SYSTEMD_EXEC_PID=$BASHPID; exec "$@"); exit $?
        """;

    /// <summary>Longer than anything here takes; a test that hangs fails instead.</summary>
    internal static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly TemporaryFolder _folder = new();
    private readonly Process _manager;
    private readonly List<string> _journal = [];
    private readonly Channel<string> _lines = Channel.CreateUnbounded<string>();
    private readonly Task _reading;
    private readonly TaskCompletionSource<int> _number = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public SystemdService(params IEnumerable<string> arguments)
    {
        Notified = new(_folder.File("notify"));
        // A shell that is called systemd: the child looks at its parent's name in /proc/<pid>/comm.
        var shell = _folder.File("systemd");
        File.Copy("/bin/bash", shell);
        _manager = Process.Start(new ProcessStartInfo(shell, ["-c", Line, "systemd", Notified.Path, .. Programs.Command(Programs.Worker, arguments)])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _manager.StandardInput.Close();
        _reading = Task.WhenAll(ReadAsync(_manager.StandardOutput), ReadAsync(_manager.StandardError));
    }

    public NotifySocket Notified { get; }

    /// <summary>What went to standard output and error, as journald would get it.</summary>
    public IReadOnlyList<string> Journal => _journal;

    /// <summary>Waits for a line in the journal.</summary>
    public async Task SaysAsync(string part)
    {
        using var patience = new CancellationTokenSource(Patience, TimeProvider.System);
        while (!(await _lines.Reader.ReadAsync(patience.Token)).Contains(part, StringComparison.Ordinal))
            await _lines.Reader.WaitToReadAsync(patience.Token);
    }

    /// <summary>Ends the service as <c>systemctl stop</c> does.</summary>
    public async Task<int> StopAsync()
    {
        using var kill = Process.Start("/bin/kill", ["-TERM", (await _number.Task).ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        return await EndAsync();
    }

    /// <summary>Waits until it ends by itself; its exit code.</summary>
    public async Task<int> EndAsync()
    {
        await _manager.WaitForExitAsync().WaitAsync(Patience, TimeProvider.System);
        await _reading.WaitAsync(Patience, TimeProvider.System);
        _lines.Writer.TryComplete();
        await Notified.DrainAsync();
        return _manager.ExitCode;
    }

    public void Dispose()
    {
        if (!_manager.HasExited)
            _manager.Kill(entireProcessTree: true);
        _manager.Dispose();
        Notified.Dispose();
        _folder.Dispose();
    }

    private void Keep(string line)
    {
        lock (_journal)
            _journal.Add(line);
        _lines.Writer.TryWrite(line);
    }

    private async Task ReadAsync(StreamReader reader)
    {
        while (await reader.ReadLineAsync() is { } line)
        {
            if (!_number.Task.IsCompleted && int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                _number.SetResult(number);
            else
                Keep(line);
        }
    }
}
