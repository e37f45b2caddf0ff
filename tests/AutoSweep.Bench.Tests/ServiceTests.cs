using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Bench.Tests;

/// <summary>The worker under a service manager, a real process with real signals. What is told and when is from sd_notify(3), systemd.service(5)
/// and, for the log, sd-daemon(3).</summary>
public sealed class ServiceTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public async Task Readiness_is_told_once_the_bench_is_connected_and_a_stop_ends_with_exit_code_0()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1);
        using var service = new SystemdService(Keep(bench.Flags(Job)));

        await service.Notified.UntilAsync(told => told == "READY=1");

        Assert.Contains(JournalFile.Read(Path.Combine(Job, "journal.jsonl")).Entries, entry => entry.Event is BenchConnected);
        Assert.Equal(0, await service.StopAsync());
        Assert.Equal("STOPPING=1", service.Notified.Told.Last(told => !told.StartsWith("STATUS=", StringComparison.Ordinal)));
        Assert.Contains(service.Notified.Told, told => told.StartsWith("STATUS=The bench is connected", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_happens_goes_to_the_journal_a_line_an_entry_with_its_priority_before_it()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1);
        using var service = new SystemdService(Keep(bench.Flags(Job)));

        await service.Notified.UntilAsync(told => told == "READY=1");
        await service.StopAsync();

        // 6 is LOG_INFO (syslog(3)).
        Assert.Contains(service.Journal, line => line.StartsWith("<6>", StringComparison.Ordinal) && line.Contains("SIM-M-small", StringComparison.Ordinal));
        Assert.Contains(service.Journal, line => line.StartsWith("<6>", StringComparison.Ordinal) && line.Contains("The bench is connected", StringComparison.Ordinal));
        Assert.DoesNotContain(service.Journal, line => line.StartsWith("<7>", StringComparison.Ordinal));
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(Job, "log")));
    }

    [Fact]
    public async Task A_service_whose_bench_is_off_is_ready_says_what_it_waits_for_and_connects_when_the_bench_is_there()
    {
        using var held = new HeldPort();
        string[] flags = ["--generator", "classic-91-60hz", "--job", Job, "--meter", $"TCPIP::127.0.0.1::{held.Number}::SOCKET"];
        using var service = new SystemdService(Keep([.. flags, "--wait-for-bench"]));

        await service.Notified.UntilAsync(told => told == "READY=1");
        await service.Notified.UntilAsync(
            told => told.StartsWith("STATUS=Waiting for the bench", StringComparison.Ordinal) && told.Contains($"{held.Number}", StringComparison.Ordinal));
        held.Dispose();
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1, "--meter-port", $"{held.Number}");
        await service.Notified.UntilAsync(told => told.StartsWith("STATUS=The bench is connected", StringComparison.Ordinal));

        Assert.Equal(0, await service.StopAsync());
        // 4 is LOG_WARNING.
        Assert.Single(service.Journal, line => line.StartsWith("<4>", StringComparison.Ordinal) && line.Contains("Waiting for the bench", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_stop_while_the_bench_is_waited_for_ends_with_exit_code_0()
    {
        using var held = new HeldPort();
        using var service = new SystemdService(Keep(
            ["--generator", "classic-91-60hz", "--job", Job, "--meter", $"TCPIP::127.0.0.1::{held.Number}::SOCKET", "--wait-for-bench"]));

        await service.Notified.UntilAsync(told => told == "READY=1");

        Assert.Equal(0, await service.StopAsync());
        Assert.Contains("STOPPING=1", service.Notified.Told);
    }

    [Fact]
    public async Task A_bench_with_another_calibration_is_never_ready_and_its_exit_code_and_message_say_why()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1);
        var other = _folder.Write("other.json", File.ReadAllText(bench.Calibration).Replace("SIM-F-small", "SIM-F-other", StringComparison.Ordinal));
        using var service = new SystemdService(Keep([.. bench.Flags(Job).Select(flag => flag == bench.Calibration ? other : flag), "--wait-for-bench"]));

        Assert.Equal(7, await service.EndAsync());

        Assert.DoesNotContain("READY=1", service.Notified.Told);
        // 3 is LOG_ERR.
        Assert.Contains(service.Journal, line => line.StartsWith("<3>", StringComparison.Ordinal) && line.Contains("SIM-F-other", StringComparison.Ordinal)
            && line.Contains("What to do:", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("TCPIQ::127.0.0.1::5025::SOCKET")]
    [InlineData(null)]
    public async Task A_slip_in_the_wiring_is_not_waited_for(string? meter)
    {
        using var service = new SystemdService(Keep(
            ["--generator", "classic-91-60hz", "--job", Job, .. meter is null ? [] : new[] { "--meter", meter }, "--wait-for-bench"]));

        Assert.Equal(4, await service.EndAsync());

        Assert.DoesNotContain("READY=1", service.Notified.Told);
    }

    [Fact]
    public async Task A_service_that_is_started_again_goes_on_with_its_job()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1);
        for (var start = 1; start <= 2; start++)
        {
            using var service = new SystemdService(Keep(bench.Flags(Job)));
            await service.Notified.UntilAsync(told => told == "READY=1");
            Assert.Equal(0, await service.StopAsync());
        }

        var events = JournalFile.Read(Path.Combine(Job, "journal.jsonl")).Entries.Select(entry => entry.Event).ToList();
        Assert.Single(events.OfType<JobOpened>());
        Assert.Equal(2, events.OfType<BenchConnected>().Count());
    }

    [Fact]
    public async Task A_service_measures_nothing_and_moves_no_relay()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1, "--fixture", "tcp");
        using var service = new SystemdService(Keep(bench.Flags(Job)));
        await service.Notified.UntilAsync(told => told == "READY=1");
        await service.StopAsync();

        Assert.All(JournalFile.Read(Path.Combine(Job, "journal.jsonl")).Entries, entry => Assert.True(entry.Event is JobOpened or BenchConnected));
        Assert.Equal(0, await CyclesAsync(bench));
    }

    [Fact]
    public async Task The_bench_page_tells_that_it_is_ready_when_it_answers_and_ends_with_exit_code_0()
    {
        using var service = new SystemdService(["serve", "--data", _folder.Path, "--port", "0"]);
        await service.Notified.UntilAsync(told => told.StartsWith("STATUS=The bench page: ", StringComparison.Ordinal));
        using var client = new HttpClient(new SocketsHttpHandler { UseProxy = false });
        var address = service.Notified.Told.Single(told => told.StartsWith("STATUS=", StringComparison.Ordinal))["STATUS=The bench page: ".Length..];

        var answer = await client.GetAsync(new Uri(address));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        await service.Notified.UntilAsync(told => told == "READY=1");
        Assert.Equal(0, await service.StopAsync());
        Assert.Contains("STOPPING=1", service.Notified.Told);
    }

    [Fact]
    public async Task A_service_for_other_computers_keeps_its_token_out_of_the_log()
    {
        using var service = new SystemdService(["serve", "--data", _folder.Path, "--port", "0", "--address", "0.0.0.0"]);
        await service.Notified.UntilAsync(told => told.StartsWith("STATUS=The bench page: ", StringComparison.Ordinal));
        await service.StopAsync();

        var token = (await File.ReadAllTextAsync(_folder.File("page-token"))).Trim();
        Assert.DoesNotContain(service.Journal, line => line.Contains(token, StringComparison.Ordinal));
        Assert.Contains(service.Journal, line => line.Contains("page-token", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_stop_in_the_middle_of_a_sweep_opens_the_relays_itself_and_leaves_nothing_to_the_watchdog()
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", rate: 10, "--fixture", "tcp");
        using var service = new SystemdService(["sweep", .. bench.Flags(Job)]);
        await service.SaysAsync(" peak ");

        Assert.Equal(20, await service.StopAsync());

        Assert.Contains("STOPPING=1", service.Notified.Told);
        Assert.Equal("(@)", await AskAsync(bench, "ROUT:CLOS:STAT?"));
        // 101 would be the watchdog's.
        Assert.StartsWith("0,", await AskAsync(bench, "SYST:ERR?"), StringComparison.Ordinal);
        Assert.True(await CyclesAsync(bench) > 0);
    }

    public void Dispose() => _folder.Dispose();

    private string Job => _folder.File("job");

    private static IEnumerable<string> Keep(IEnumerable<string> flags) => ["keep", .. flags.Where(flag => flag != "--hands-free")];

    // How often the relays have operated, all together; the box counts that itself.
    private static async Task<int> CyclesAsync(ServedBench bench)
    {
        var relays = await AskAsync(bench, "SYST:REL?");
        return (await AskAsync(bench, $"DIAG:REL:CYCL? (@1:{relays})")).Split(',').Sum(count => int.Parse(count, CultureInfo.InvariantCulture));
    }

    private static async Task<string> AskAsync(ServedBench bench, string query)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, int.Parse(bench.Fixture.Split("::")[2], CultureInfo.InvariantCulture));
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(query + "\n"));
        using var reader = new StreamReader(client.GetStream());
        return (await reader.ReadLineAsync().WaitAsync(SystemdService.Patience, TimeProvider.System))!;
    }
}
