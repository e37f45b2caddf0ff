using System.Net;
using System.Net.Sockets;
using System.Text;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.PageHost.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Page.Work;
using Xunit.Abstractions;

namespace AutoSweep.PageHost.Tests;

/// <summary>Too much of everything, over real sockets, while the bench works.</summary>
public sealed class FloodTests(ITestOutputHelper output)
{
    private const int HalfOpen = 1000;
    private const long Upload = 100L * 1024 * 1024;

    // Far below the upload; what the test and the server need for themselves all the same.
    private const long FewBytes = 16L * 1024 * 1024;

    [Fact]
    public async Task A_thousand_half_open_connections_neither_stop_the_page_nor_harm_the_sweep()
    {
        const double rate = 5;
        await using var bench = await Patience.WithinAsync(ServedBench.StartAsync("small", "sweep", rate));
        await using var page = await ServedPage.StartAsync(clockRate: rate);
        BenchWiringFile.Write(page.Desk.Options.Wiring, new()
        {
            Meter = bench.Meter, Fixture = bench.Fixture, Calibration = bench.Calibration, AmplifierGain = bench.Ready.GetProperty("amplifierGain").GetDouble(),
        });
        await page.Desk.BeginAsync("flooded", GeneratorProfileFile.Read(bench.Ready.GetProperty("generator").GetString()!));
        using var held = new HeldSweep(page.Desk.Job!);
        await page.Desk.StartAsync(JobStage.Sweep, handsFree: true);
        await Patience.WithinAsync(held.Swept);

        var sockets = await Task.WhenAll(Enumerable.Range(0, HalfOpen).Select(_ => HalfAsync(page)));
        var sweptDuring = page.Desk.Job!.State.Swept.Count;
        Assert.True(page.Desk.IsBusy, "The sweep was over before the flood stood.");
        held.GoOn();
        var during = await page.GetAsync("/");
        await Patience.WithinAsync(Task.WhenAll(sockets.Select(ClosedAsync)));
        var after = await page.GetAsync("/");
        await UntilAsync(page.Desk, () => !page.Desk.IsBusy);

        output.WriteLine($"swept when the flood stood: {sweptDuring}, at the end: {page.Desk.Job!.State.Swept.Count}");
        Assert.True(page.Desk.Job.State.Swept.Count > sweptDuring, "Nothing was swept under the flood.");
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (during.StatusCode, after.StatusCode));
        Assert.True(page.Desk.Work!.Progress == WorkProgress.Done, $"{page.Desk.Work.Fault}");
        var (exitCode, text) = await Patience.WithinAsync(ServedBench.ScoreAsync("small", page.Desk.Job.Folder.Path));
        Assert.True(exitCode == 0, text);
    }

    [Fact]
    public async Task An_upload_of_100_MiB_is_refused_before_a_byte_of_it_is_read()
    {
        await using var page = await ServedPage.StartAsync();
        var before = GC.GetTotalAllocatedBytes();

        var answer = await page.RawAsync(
            "POST / HTTP/1.1", "Host: 127.0.0.1:PORT", "Origin: http://127.0.0.1:PORT", "Content-Type: application/x-www-form-urlencoded", $"Content-Length: {Upload}");

        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, FewBytes);
    }

    [Theory]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData("application/octet-stream")]
    public async Task An_upload_that_does_not_say_how_long_it_is_is_broken_off_and_never_held_in_memory(string type)
    {
        await using var page = await ServedPage.StartAsync();
        var before = GC.GetTotalAllocatedBytes();
        using var socket = await page.ConnectAsync();
        await socket.SendAsync(Encoding.ASCII.GetBytes($"POST / HTTP/1.1\r\nHost: 127.0.0.1:{page.Port}\r\nOrigin: {page.Origin}\r\nContent-Type: {type}\r\nTransfer-Encoding: chunked\r\n\r\n"));

        var sent = await Patience.WithinAsync(PourAsync(socket));

        output.WriteLine($"{sent / 1024} KiB went out before the server closed");
        Assert.InRange(sent, 0, Upload - 1);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, FewBytes);
        Assert.Equal(HttpStatusCode.OK, (await page.GetAsync("/")).StatusCode);
    }

    [Fact]
    public async Task A_head_without_an_end_is_refused()
    {
        await using var page = await ServedPage.StartAsync();

        Assert.StartsWith("HTTP/1.1 431", await page.RawAsync("GET / HTTP/1.1", "Host: 127.0.0.1:PORT", "X-Long: " + new string('x', 20_000)), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 414", await page.RawAsync("GET /" + new string('x', 5_000) + " HTTP/1.1", "Host: 127.0.0.1:PORT"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 431",
            await page.RawAsync(["GET / HTTP/1.1", "Host: 127.0.0.1:PORT", .. Enumerable.Range(0, 100).Select(number => $"X-{number}: x")]), StringComparison.Ordinal);
    }

    // The head of a request that never ends.
    private static async Task<Socket> HalfAsync(ServedPage page)
    {
        var socket = await page.ConnectAsync();
        await socket.SendAsync("GET / HTTP/1.1\r\nHo"u8.ToArray());
        return socket;
    }

    // The server ends it by itself, with or without a last word.
    private static async Task ClosedAsync(Socket socket)
    {
        using var one = socket;
        var buffer = new byte[1024];
        try
        {
            while (await one.ReceiveAsync(buffer) > 0)
            {
            }
        }
        catch (SocketException)
        {
            // Reset is an end as well.
        }
    }

    private static async Task<long> PourAsync(Socket socket)
    {
        var chunk = Encoding.ASCII.GetBytes("10000\r\n" + new string('a', 0x10000) + "\r\n");
        var sent = 0L;
        try
        {
            while (sent < Upload)
                sent += await socket.SendAsync(chunk);
        }
        catch (SocketException)
        {
            // Closed by the server: what is looked for.
        }

        return sent;
    }

    private static async Task UntilAsync(Desk desk, Func<bool> isSo)
    {
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        desk.Changed += Look;
        Look();
        await Patience.WithinAsync(done.Task);
        desk.Changed -= Look;

        void Look()
        {
            if (isSo())
                done.TrySetResult();
        }
    }

    /// <summary>A sweep that stands still at its first result until the flood stands: on a slow machine it would be over before.</summary>
    private sealed class HeldSweep : IDisposable
    {
        private readonly TaskCompletionSource _swept = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly ManualResetEventSlim _goesOn = new();
        private readonly JobRecord _job;

        public HeldSweep(JobRecord job)
        {
            _job = job;
            job.Appended += Hold;
        }

        public Task Swept => _swept.Task;

        public void GoOn() => _goesOn.Set();

        public void Dispose()
        {
            _job.Appended -= Hold;
            GoOn();
        }

        // On the worker's own thread.
        private void Hold(JournalEntry entry)
        {
            if (entry.Event is OutputSwept && _swept.TrySetResult())
                _goesOn.Wait(Patience.Longest);
        }
    }
}
