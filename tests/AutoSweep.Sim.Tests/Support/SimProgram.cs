using System.Diagnostics;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>The simulator as a program of its own.</summary>
internal static class SimProgram
{
    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
        };
        var program = Path.Combine(AppContext.BaseDirectory, "autosweep-sim.dll");
        foreach (var argument in arguments.Prepend(program)) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }

    public static async Task<(int Code, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var process = Start(arguments);
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output, await errors);
    }
}
