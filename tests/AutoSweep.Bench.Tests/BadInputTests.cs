using System.Net;
using System.Net.Sockets;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>Bad input of every kind: its exit code, and a message that says what was found, what was expected and what to do.</summary>
public sealed class BadInputTests : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();
    private ServedBench _bench = null!;

    public async Task InitializeAsync() => _bench = await ServedBench.StartAsync("small", "sweep", rate: 40);

    public async Task DisposeAsync()
    {
        await _bench.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task A_profile_with_an_unknown_field_is_named_with_its_line()
    {
        var profile = File.ReadAllText(Flag("--generator")).Replace("\"mainsHertz\"", "\"mainsHerz\"", StringComparison.Ordinal);

        await ExpectAsync(3, "mainsHerz", With("--generator", _folder.Write("profile.json", profile)));
    }

    [Fact]
    public Task A_serial_port_that_is_not_there_is_named() => ExpectAsync(4, "/dev/ttyNOTHERE", With("--fixture", "ASRL/dev/ttyNOTHERE::INSTR"));

    [Fact]
    public Task A_resource_name_with_a_slip_is_named() => ExpectAsync(4, "TCPIQ::127.0.0.1", With("--meter", "TCPIQ::127.0.0.1::5025::SOCKET"));

    [Fact]
    public async Task A_port_on_which_nobody_listens_is_named()
    {
        using var held = new HeldPort();

        await ExpectAsync(4, $"{held.Number}", With("--meter", $"TCPIP::127.0.0.1::{held.Number}::SOCKET"));
    }

    [Fact]
    public async Task A_meter_that_answers_nothing_is_named()
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start();

        await ExpectAsync(5, "*IDN?", With("--meter", $"TCPIP::127.0.0.1::{((IPEndPoint)silent.LocalEndpoint).Port}::SOCKET"));
    }

    [Fact]
    public async Task An_instrument_that_is_no_meter_is_told_from_one()
    {
        await using var other = await ServedBench.StartAsync("small", "none", rate: 40, "--fixture", "tcp");

        await ExpectAsync(6, "CONF", With("--meter", other.Fixture));
    }

    [Fact]
    public Task One_port_for_two_instruments_is_refused() => ExpectAsync(4, "both", With("--meter", _bench.Fixture));

    [Fact]
    public async Task A_calibration_of_another_fixture_is_refused_with_both_serial_numbers()
    {
        var calibration = File.ReadAllText(Flag("--calibration")).Replace("SIM-F-small", "SIM-F-other", StringComparison.Ordinal);

        var run = await ExpectAsync(7, "SIM-F-other", With("--calibration", _folder.Write("other.json", calibration)));

        Assert.Contains("SIM-F-small", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_folder_in_use_is_refused_and_the_job_in_it_goes_on()
    {
        Directory.CreateDirectory(Job);
        await using (new FileStream(Path.Combine(Job, "job.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
            await ExpectAsync(8, "job.lock", With());

        Assert.Equal(0, (await Run.WorkerAsync(["sweep", .. With()])).ExitCode);
    }

    // A file that may not grow past a few kilobytes is to a program what a full disk is: the write fails half-way.
    [Fact]
    public async Task A_full_disk_stops_the_job_with_everything_recorded_so_far_and_the_job_goes_on_when_there_is_room()
    {
        using var worker = Programs.StartInShell("export DOTNET_EnableWriteXorExecute=0; trap '' XFSZ; ulimit -f 12; exec \"$@\"", Programs.Worker, ["sweep", .. With()]);
        var run = await Run.EndAsync(worker);

        Assert.True(run.ExitCode == 9, run.Output + run.Errors);
        var kept = File.ReadAllText(Path.Combine(Job, "journal.jsonl"));
        Assert.EndsWith("}\n", kept, StringComparison.Ordinal);
        Assert.Equal(0, (await Run.WorkerAsync(["sweep", .. With(), "--resume"])).ExitCode);
        Assert.StartsWith(kept, File.ReadAllText(Path.Combine(Job, "journal.jsonl")), StringComparison.Ordinal);
        Assert.Equal(0, (await ServedBench.ScoreAsync("small", Job)).ExitCode);
    }

    [Fact]
    public async Task An_unreadable_journal_line_in_the_middle_is_named_and_can_be_set_aside()
    {
        Assert.Equal(0, (await Run.WorkerAsync(["sweep", .. With()])).ExitCode);
        var path = Path.Combine(Job, "journal.jsonl");
        var lines = File.ReadAllLines(path);
        lines[4] = lines[4][..^20];
        File.WriteAllLines(path, lines);

        await ExpectAsync(10, "line 5", [.. With(), "--resume"]);
    }

    [Fact]
    public async Task A_command_that_does_not_exist_is_answered_with_the_ones_that_do()
    {
        Assert.Equal(2, (await Run.WorkerAsync("swep")).ExitCode);
    }

    [Fact]
    public async Task A_new_job_without_a_generator_says_what_can_be_named()
    {
        var run = await Run.WorkerAsync("sweep", "--job", Job, "--meter", _bench.Meter);

        Assert.Equal(3, run.ExitCode);
        Assert.Contains("classic-91-60hz", run.Errors, StringComparison.Ordinal);
    }

    private string Job => _folder.File("job");

    private string Flag(string name)
    {
        var flags = _bench.Flags(Job).ToList();
        return flags[flags.IndexOf(name) + 1];
    }

    private List<string> With(string? flag = null, string? value = null)
    {
        var flags = _bench.Flags(Job).ToList();
        if (flag is not null)
            flags[flags.IndexOf(flag) + 1] = value!;
        return flags;
    }

    private static async Task<Run> ExpectAsync(int exitCode, string named, IEnumerable<string> flags)
    {
        var run = await Run.WorkerAsync(["sweep", .. flags]);

        Assert.True(run.ExitCode == exitCode, $"exit code {run.ExitCode}: {run.Output}{run.Errors}");
        foreach (var part in new[] { named, "Found:", "Expected:", "What to do:" })
            Assert.Contains(part, run.Errors, StringComparison.Ordinal);
        return run;
    }
}
