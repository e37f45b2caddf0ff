using System.Diagnostics;
using System.Globalization;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A program at a terminal: lines are typed, lines are read. Whoever waits too long for one fails with all that was seen.</summary>
internal sealed class TypedProgram : IAsyncDisposable
{
    /// <summary>Far longer than any line takes on a busy machine; a program that hangs fails the test.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly string _name;
    private readonly Process _process;
    private readonly Task<string> _errors;
    private readonly List<string> _seen = [];

    public TypedProgram(string program, params IReadOnlyList<string> arguments)
    {
        (_name, _process) = ($"{Path.GetFileNameWithoutExtension(program)} {string.Join(' ', arguments.Take(1))}", Programs.Start(program, arguments));
        _errors = _process.StandardError.ReadToEndAsync();
    }

    /// <summary>Everything that was printed and typed so far; what was typed stands after <c>$</c>.</summary>
    public IReadOnlyList<string> Seen => _seen;

    public async Task TypeAsync(string line)
    {
        _seen.Add($"$ {line}");
        await WithinAsync(_process.StandardInput.WriteLineAsync(line), $"to take '{line}'");
        await WithinAsync(_process.StandardInput.FlushAsync(), $"to take '{line}'");
    }

    /// <summary>The next line, bells taken off; none once the program has closed its output.</summary>
    public async Task<string?> NextAsync()
    {
        var line = await WithinAsync(_process.StandardOutput.ReadLineAsync(), "to print a line");
        if (line is null)
            return null;
        _seen.Add(line.Trim('\a'));
        return _seen[^1];
    }

    /// <summary>Waits for the end.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> EndAsync()
    {
        await WithinAsync(_process.WaitForExitAsync(), "to end");
        return _process.ExitCode;
    }

    /// <summary>What was seen, and what went to standard error.</summary>
    public async Task<string> TranscriptAsync() => string.Join('\n', _seen) + "\n" + (_process.HasExited ? await _errors : "");

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync().WaitAsync(Patience, TimeProvider.System);
        _process.Dispose();
    }

    private async Task WithinAsync(Task task, string what) => await WithinAsync(Valued(task), what);

    private async Task<T> WithinAsync<T>(Task<T> task, string what)
    {
        try
        {
            return await task.WaitAsync(Patience, TimeProvider.System);
        }
        catch (TimeoutException)
        {
            Assert.Fail(string.Create(CultureInfo.InvariantCulture,
                $"waited {Patience.TotalSeconds:0} s for {_name} {what}. The last of what was seen:\n{string.Join('\n', _seen.TakeLast(20))}"));
            throw;
        }
    }

    private static async Task<bool> Valued(Task task)
    {
        await task;
        return true;
    }
}
