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
        var arguments = line.Split(' ')[1..].Select(word => word switch
        {
            "/etc/autosweep/bench.json" => _folder.Write("bench.json", "{ \"format\": 1 }"),
            "/var/lib/autosweep/bench" => _folder.File("job"),
            "${AUTOSWEEP_GENERATOR}" => File.ReadAllLines(Unit).Single(one => one.StartsWith("Environment=AUTOSWEEP_GENERATOR=", StringComparison.Ordinal)).Split('=')[2],
            _ => word,
        });

        var run = await Run.WorkerAsync(arguments);

        // Understood, and gone as far as a bench without a meter goes.
        Assert.True(run.ExitCode == 4, run.Output + run.Errors);
        Assert.Contains("no meter", run.Errors, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();
}
