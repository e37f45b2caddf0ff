using System.Diagnostics;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A finished run of the worker.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">What it printed.</param>
/// <param name="Errors">What it printed to standard error, line breaks taken out: a terminal's width decides where they fall.</param>
internal sealed record Run(int ExitCode, string Output, string Errors)
{
    /// <summary>The longest that any run may take: ten times what the longest takes here, and still a failure with a message and not a CI that never ends.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    public static Task<Run> WorkerAsync(params IEnumerable<string> arguments) => EndAsync(Programs.Start(Programs.Worker, arguments));

    /// <summary>Waits for a program's end; one that hangs is killed, and the test fails.</summary>
    /// <param name="process">The program.</param>
    /// <param name="longest">The longest that it may take, where that is another than for every run.</param>
    /// <param name="readErrors">Its standard error, where somebody reads that already.</param>
    public static async Task<Run> EndAsync(Process process, TimeSpan? longest = null, Task<string>? readErrors = null)
    {
        using (process)
        {
            process.StandardInput.Close();
            var output = process.StandardOutput.ReadToEndAsync();
            var errors = readErrors ?? process.StandardError.ReadToEndAsync();
            await EndAsync(process, longest ?? Longest, output, errors);
            return new(process.ExitCode, await output, (await errors).ReplaceLineEndings(" "));
        }
    }

    private static async Task EndAsync(Process process, TimeSpan longest, Task<string> output, Task<string> errors)
    {
        using var limit = new CancellationTokenSource(longest, TimeProvider.System);
        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException(
                $"{string.Join(' ', process.StartInfo.ArgumentList)} had not ended after {longest.TotalMinutes:0} minutes.\n{await output}\n{await errors}");
        }
    }
}
