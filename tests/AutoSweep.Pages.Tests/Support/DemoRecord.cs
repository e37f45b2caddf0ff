using AutoSweep.Bench.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.Support;

/// <summary>The demo's job and its record, made once, and a browser to look at it.</summary>
public sealed class DemoRecord : IAsyncLifetime
{
    // Nothing but the page: no sandbox because tests run as root in CI, no service of the browser's own that would reach for a network.
    internal static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-quic", "--no-first-run", "--disable-component-update",
        "--disable-sync",
    ];

    private readonly string _folder = Directory.CreateTempSubdirectory("autosweep-").FullName;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The job's folder.</summary>
    public string Folder => Path.Combine(_folder, "demo");

    /// <summary>What the job's journal folds to.</summary>
    public JobReading Job => JobReading.Read(Folder);

    public async Task InitializeAsync()
    {
        if (Tools.Missing is not null)
            return;
        var run = await Run.WorkerAsync("demo", "--job", Folder, "--clock-rate", "60");
        // A busy computer stretches the accelerated bench's time between two readings, and a sweep that then says "no peak" misses the simulator's truth. That is
        // DemoTests' to hold; here such a job is as good a job to print and to show.
        Assert.True(run.ExitCode is JobOutcome.Success or JobOutcome.Missed, run.Output + run.Errors);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Tools.Chromium, Args = Flags });
    }

    /// <summary>Opens one of the record's files in a browser that has no network, and keeps what it asks for.</summary>
    /// <param name="file">The file's name in the job folder.</param>
    /// <param name="asked">Gets the address of every request.</param>
    public async Task<IPage> OpenAsync(string file, ICollection<string>? asked = null)
    {
        var context = await _browser!.NewContextAsync(new() { Offline = true });
        var page = await context.NewPageAsync();
        page.Request += (_, request) => asked?.Add(request.Url);
        await page.GotoAsync(new Uri(Path.Combine(Folder, file)).AbsoluteUri);
        return page;
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
