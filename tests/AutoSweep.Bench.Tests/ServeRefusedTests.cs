using System.Globalization;
using System.Net;
using System.Net.Sockets;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>Where the bench page cannot be opened it says so as every command does, and ends; nobody sees a stack.</summary>
public sealed class ServeRefusedTests : IDisposable
{
    // A start takes two seconds here.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task A_port_that_another_program_holds_is_named()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture);

        await RefusesAsync($"127.0.0.1:{port} cannot be listened on", "a free port", "--data", _folder.Path, "--port", port);
    }

    // 192.0.2.0/24 belongs to no computer (RFC 5737, 3).
    [Fact]
    public Task An_address_that_this_computer_has_not_is_named() =>
        RefusesAsync("192.0.2.7:0 cannot be listened on", "an address of this computer", "--data", _folder.Path, "--address", "192.0.2.7", "--port", "0");

    [Fact]
    public Task A_data_folder_that_is_a_file_is_named() =>
        RefusesAsync("cannot be written", "a data folder that this user may write", "--data", _folder.Write("taken", "a file"), "--port", "0");

    // Nobody can make a folder there, root included, as tests in CI are (proc(5)).
    [Fact]
    public Task A_data_folder_that_cannot_be_made_is_named_before_a_simulated_bench_is_started() =>
        RefusesAsync("/proc/nowhere cannot be written", "a data folder that this user may write", "--data", "/proc/nowhere", "--port", "0", "--simulated");

    [Fact]
    public Task A_folder_in_which_no_file_can_be_made_is_named()
    {
        Directory.CreateSymbolicLink(_folder.File("jobs"), "/proc/self");

        return RefusesAsync("cannot be written", "a data folder that this user may write", "--data", _folder.Path, "--port", "0");
    }

    public void Dispose() => _folder.Dispose();

    private static async Task RefusesAsync(string found, string expected, params IEnumerable<string> arguments)
    {
        var run = await Run.EndAsync(Programs.Start(Programs.Worker, ["serve", .. arguments]), Patience);

        Assert.True(run.ExitCode == 4, $"{run.ExitCode}: {run.Output}{run.Errors}");
        var said = string.Join(' ', run.Errors.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(found, said, StringComparison.Ordinal);
        Assert.Contains(expected, said, StringComparison.Ordinal);
        Assert.Contains("What to do: ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
    }
}
