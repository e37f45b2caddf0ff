using System.Buffers.Binary;
using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>One file for each computer, built as docs/service.md says. The one for this kind of computer is started, with no .NET in its environment.</summary>
public sealed partial class PublishTests(PublishedPrograms programs, ITestOutputHelper output) : IClassFixture<PublishedPrograms>, IDisposable
{
    // The demo takes a quarter of a minute on two busy cores; a start that hangs is a failure.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    // The head of an ELF file (System V ABI, "ELF Header": class 2 is 64 bits, data 1 little-endian), and where it names the machine.
    private static readonly byte[] Elf = [0x7F, (byte)'E', (byte)'L', (byte)'F', 2, 1];
    private const int ElfMachine = 18;

    // The head of a PE file (Microsoft's PE format, "MS-DOS Stub" and "COFF File Header"): where its signature lies, and the machine after it.
    private const int PeSignatureAt = 0x3C;

    private static readonly string ThisComputer = RuntimeInformation.OSArchitecture == Architecture.Arm64 ? "linux-arm64" : "linux-x64";

    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void The_page_names_a_computer_a_line()
    {
        var runtimes = PublishedPrograms.Commands.Select(line => line.Split(' ')[5]);

        Assert.Equal(["linux-x64", "linux-arm64", "win-x64"], runtimes);
    }

    // System V ABI, machine-specific values of e_machine: EM_X86_64 is 62, EM_AARCH64 183.
    [Theory]
    [InlineData("linux-x64", 62)]
    [InlineData("linux-arm64", 183)]
    public async Task A_program_for_Linux_is_one_file_for_that_machine(string runtime, int machine)
    {
        var folder = await programs.FolderAsync(runtime);

        foreach (var program in new[] { "autosweep", "sim/autosweep-sim" })
        {
            var head = Head(Path.Combine(folder, program));
            Assert.Equal(Elf, head[..Elf.Length]);
            Assert.Equal(machine, BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(ElfMachine)));
        }

        CheckFolder(folder);
    }

    // Microsoft's PE format, "Machine Types": IMAGE_FILE_MACHINE_AMD64 is 0x8664.
    [Fact]
    public async Task A_program_for_Windows_is_one_file_for_that_machine()
    {
        var folder = await programs.FolderAsync("win-x64");

        foreach (var program in new[] { "autosweep.exe", "sim/autosweep-sim.exe" })
        {
            var head = Head(Path.Combine(folder, program));
            Assert.Equal("MZ"u8.ToArray(), head[..2]);
            var signature = BinaryPrimitives.ReadInt32LittleEndian(head.AsSpan(PeSignatureAt));
            Assert.Equal("PE\0\0"u8.ToArray(), head[signature..(signature + 4)]);
            Assert.Equal(0x8664, BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(signature + 4)));
        }

        CheckFolder(folder);
    }

    [Theory]
    [InlineData("0.1.0", "--version")]
    [InlineData("autosweep demo", "--help")]
    [InlineData("Nothing was sent", "instruments")]
    public async Task It_starts_where_no_NET_is_known(string said, params string[] arguments)
    {
        var run = await RunAsync(arguments);

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.Contains(said, run.Output, StringComparison.Ordinal);
    }

    // Survey, sweep, matching, charts and record: the solver, the drawing and the serial port are native libraries that come out of the file.
    [Fact]
    public async Task It_does_a_whole_job_on_the_small_simulated_bench()
    {
        var job = _folder.File("job");

        var run = await RunAsync(["demo", "--sim-bench", "small", "--job", job]);

        output.WriteLine(run.Output + run.Errors);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.Contains("6 swept", run.Output, StringComparison.Ordinal);
        Assert.Contains("<svg", await File.ReadAllTextAsync(Path.Combine(job, "report.html")), StringComparison.Ordinal);
        Assert.Equal(7, File.ReadAllLines(Path.Combine(job, "sweeps.csv")).Length);
    }

    // Pages, styles and the framework's script lie beside the program and are found from any folder.
    [Fact]
    public async Task It_serves_the_page_with_all_that_the_page_asks_for()
    {
        using var served = Process.Start(await StartOfAsync(["serve", "--data", _folder.File("data"), "--port", "0"]))!;
        served.StandardInput.Close();
        using var limit = new CancellationTokenSource(Patience, TimeProvider.System);
        try
        {
            var line = await served.StandardOutput.ReadLineAsync(limit.Token) ?? await served.StandardError.ReadToEndAsync(limit.Token);
            using var browser = new HttpClient { BaseAddress = new(line.Split(": ", 2)[1].Trim()) };
            var page = await browser.GetStringAsync("/", limit.Token);
            var asked = Asked().Matches(page).Select(match => match.Groups["address"].Value).ToList();
            Assert.Contains(asked, address => address.StartsWith("_framework/blazor.web", StringComparison.Ordinal));
            foreach (var address in asked)
                Assert.NotEmpty(await browser.GetStringAsync(address, limit.Token));
        }
        finally
        {
            served.Kill(entireProcessTree: true);
        }
    }

    // As a system account may be: without a folder to unpack to it says so and ends; DOTNET_BUNDLE_EXTRACT_BASE_DIR, as in the unit file, mends it.
    [Fact]
    public async Task Without_a_folder_to_unpack_to_it_says_so_instead_of_hanging()
    {
        var run = await RunAsync(["--version"], start =>
        {
            start.Environment["HOME"] = "/nonexistent";
            start.Environment.Remove("DOTNET_BUNDLE_EXTRACT_BASE_DIR");
        });

        Assert.NotEqual(0, run.ExitCode);
        Assert.Contains("[/nonexistent]", run.Errors, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    private static byte[] Head(string path)
    {
        using var file = File.OpenRead(path);
        var head = new byte[1024];
        file.ReadExactly(head);
        // A runtime, a solver and a drawing library are in it.
        Assert.True(file.Length > 60_000_000, $"{path}: {file.Length} bytes");
        return head;
    }

    // As the page's table says; and no second file to run: a library beside the program would mean that it is not one file.
    private static void CheckFolder(string folder)
    {
        foreach (var inside in new[] { "drivers/scpi-dmm/driver.json", "wwwroot/bench.css", "fonts", "generator-profiles", "service/autosweep.service", "sim/benches" })
            Assert.True(Path.Exists(Path.Combine(folder, inside)), inside);
        Assert.DoesNotContain(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories), path => Path.GetExtension(path) is ".dll" or ".so");
    }

    private async Task<Run> RunAsync(IEnumerable<string> arguments, Action<ProcessStartInfo>? change = null)
    {
        var start = await StartOfAsync(arguments);
        change?.Invoke(start);
        return await Run.EndAsync(Process.Start(start)!, Patience);
    }

    private async Task<ProcessStartInfo> StartOfAsync(IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(await programs.FolderAsync(ThisComputer), "autosweep"), arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment.Clear();
        start.Environment["HOME"] = _folder.Path;
        start.Environment["DOTNET_BUNDLE_EXTRACT_BASE_DIR"] = _folder.File("unpacked");
        return start;
    }

    [GeneratedRegex("(?:src|href)=\"(?<address>[^\":]+\\.(?:js|css))\"")]
    private static partial Regex Asked();
}
