using System.Diagnostics;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>The unit file that travels beside the program.</summary>
public sealed class UnitFileTests : IDisposable
{
    private static readonly string Unit = Path.Combine(Path.GetDirectoryName(Programs.Worker)!, "service", "autosweep.service");

    private readonly TemporaryFolder _folder = new();

    [UnitVerifierFact]
    public async Task Systemd_finds_nothing_wrong_with_it()
    {
        // It verifies that the program is there, which it is not on this computer.
        var unit = _folder.Write("autosweep.service", File.ReadAllText(Unit).Replace("ExecStart=/opt/autosweep/autosweep", "ExecStart=/bin/true", StringComparison.Ordinal));

        var run = await Run.EndAsync(Process.Start(new ProcessStartInfo(UnitVerifierFactAttribute.Program, ["verify", unit])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!);

        Assert.Equal(0, run.ExitCode);
        // A key that it does not know is only warned of.
        Assert.DoesNotContain("autosweep.service", run.Output + run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_program_understands_the_line_that_it_is_started_with()
    {
        var line = File.ReadAllLines(Unit).Single(one => one.StartsWith("ExecStart=", StringComparison.Ordinal))["ExecStart=".Length..];
        // systemd.service(5): a variable without braces becomes as many words as it holds; as shipped none.
        Assert.Contains("Environment=AUTOSWEEP_OPTIONS=", File.ReadAllLines(Unit));
        var arguments = line.Split(' ')[1..].Where(word => word != "$AUTOSWEEP_OPTIONS");
        using var service = new SystemdService([.. arguments, "--data", _folder.Path, "--port", "0"]);

        await service.Notified.UntilAsync(told => told == "READY=1");

        Assert.Equal(0, await service.StopAsync());
    }

    public void Dispose() => _folder.Dispose();
}
