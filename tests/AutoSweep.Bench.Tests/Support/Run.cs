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

    public static async Task<Run> EndAsync(Process process)
    {
        using (process)
        {
            process.StandardInput.Close();
            var output = process.StandardOutput.ReadToEndAsync();
            var errors = process.StandardError.ReadToEndAsync();
            await EndAsync(process, output, errors);
            return new(process.ExitCode, await output, (await errors).ReplaceLineEndings(" "));
        }
    }

    private static async Task EndAsync(Process process, Task<string> output, Task<string> errors)
    {
        using var limit = new CancellationTokenSource(Longest, TimeProvider.System);
        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException(
                $"{string.Join(' ', process.StartInfo.ArgumentList)} had not ended after {Longest.TotalMinutes:0} minutes.\n{await output}\n{await errors}");
        }
    }
}
