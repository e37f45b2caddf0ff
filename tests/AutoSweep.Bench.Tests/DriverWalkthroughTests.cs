using System.Globalization;
using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>docs/driver-walkthrough.md, done word for word: every file written, every command run, every output compared.</summary>
public sealed partial class DriverWalkthroughTests(ITestOutputHelper output) : IDisposable
{
    // The simulated meter's clock; the commands of the page know nothing of it. Four times: a reading of 20 ms then takes 5 real ones, which the
    // check's time-out of 10 (2.5 real ones) can tell from none; timers count whole milliseconds.
    private const double Rate = 4;

    private static readonly string Page = File.ReadAllText(Programs.InRepository("docs/driver-walkthrough.md"));
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task From_nothing_to_a_passing_check_in_one_folder()
    {
        await using var meter = await MeterBench.StartAsync(Rate, "Invented Instruments,M7,100234,1.02");
        Directory.CreateDirectory(_folder.File("my-drivers/neighbour"));
        _folder.Write("my-drivers/neighbour/driver.json", "{ \"not\": \"ours\" }");
        var before = Snapshot();
        var seconds = new Queue<double>();
        foreach (Match part in Part().Matches(Page))
        {
            if (part.Groups["file"].Value is { Length: > 0 } file)
                _folder.Write(file, part.Groups["text"].Value);
            else
                seconds.Enqueue(await RunAsync(part.Groups["command"].Value, part.Groups["output"].Value, meter));
        }

        Assert.Equal(before, Snapshot().Where(one => !one.StartsWith(_folder.File("my-drivers/invented-m7"), StringComparison.Ordinal)));
        HoldAgainstTable(seconds);
    }

    [Fact]
    public void The_steps_take_less_than_an_hour()
    {
        var minutes = Row().Matches(Page).Sum(row => double.Parse(row.Groups["minutes"].Value, CultureInfo.InvariantCulture)
            + ((double.TryParse(row.Groups["seconds"].Value, CultureInfo.InvariantCulture, out var seconds) ? seconds : 0) / 60));
        Assert.InRange(minutes, 10, 59.9);
    }

    private async Task<double> RunAsync(string command, string expected, MeterBench meter)
    {
        var live = command.Contains("--live", StringComparison.Ordinal);
        var arguments = command.Replace("TCPIP::192.0.2.10::5025::SOCKET", meter.Meter, StringComparison.Ordinal).Split(' ')[1..];
        var began = TimeProvider.System.GetTimestamp();
        var run = await Run.EndAsync(Programs.StartIn(
            _folder.Path, Programs.Worker, [.. arguments, .. live ? ["--clock-rate", Rate.ToString(CultureInfo.InvariantCulture)] : Array.Empty<string>()]));
        var seconds = TimeProvider.System.GetElapsedTime(began).TotalSeconds;
        output.WriteLine($"{command}: {seconds:0.0} s, exit code {run.ExitCode}\n{run.Output}\n{run.Errors}");
        Assert.Equal(expected.Contains("FAULT", StringComparison.Ordinal) ? 3 : 0, run.ExitCode);
        Assert.All(expected.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Contains(line, run.Output, StringComparison.Ordinal));
        return seconds;
    }

    // Commands in the order of the steps; the last step's two or three share its time.
    private static void HoldAgainstTable(Queue<double> seconds)
    {
        double[] limits = [.. Row().Matches(Page).Where(row => row.Groups["seconds"].Success)
            .Select(row => double.Parse(row.Groups["seconds"].Value, CultureInfo.InvariantCulture))];
        Assert.True(seconds.Count >= limits.Length);
        foreach (var limit in limits[..^1])
            Assert.InRange(seconds.Dequeue(), 0, limit);
        Assert.InRange(seconds.Sum(), 0, limits[^1]);
    }

    /// <summary>Every file that could be touched: the folder's neighbours, the program's own, the repository's drivers, the data folder's.</summary>
    private List<string> Snapshot() =>
    [
        .. new[]
            {
                _folder.Path, Path.GetDirectoryName(Programs.Worker)!, Programs.InRepository("drivers"), Programs.InRepository("src"), Programs.InRepository("docs"),
                Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "AutoSweep", "drivers"),
            }
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            .Order(StringComparer.Ordinal)
            .Select(file => new FileInfo(file))
            .Select(file => $"{file.FullName} {file.Length} {file.LastWriteTimeUtc.Ticks}"),
    ];

    // A file's name at the end of a paragraph, then its text; or a command, then what it must print.
    [GeneratedRegex(@"`(?<file>my-drivers/[^`]+)`:\n\n```\w+\n(?<text>.*?)```|```sh\n(?<command>autosweep [^\n]+)\n```(?:\n\n```text\n(?<output>.*?)```)?", RegexOptions.Singleline)]
    private static partial Regex Part();

    [GeneratedRegex(@"^\| \d [^|]+\| (?<minutes>\d+) min \| (?:(?<seconds>\d+) s )?\|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
