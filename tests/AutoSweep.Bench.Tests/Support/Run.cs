using System.Diagnostics;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A finished run of the worker.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">What it printed.</param>
/// <param name="Errors">What it printed to standard error, line breaks taken out: a terminal's width decides where they fall.</param>
internal sealed record Run(int ExitCode, string Output, string Errors)
{
    public static Task<Run> WorkerAsync(params IEnumerable<string> arguments) => EndAsync(Programs.Start(Programs.Worker, arguments));

    public static async Task<Run> EndAsync(Process process)
    {
        using (process)
        {
            process.StandardInput.Close();
            var output = process.StandardOutput.ReadToEndAsync();
            var errors = process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            return new(process.ExitCode, await output, (await errors).ReplaceLineEndings(" "));
        }
    }
}
