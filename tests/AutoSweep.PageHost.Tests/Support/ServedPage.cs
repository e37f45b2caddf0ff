using System.Net;
using System.Net.Sockets;
using System.Text;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Page;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Tests.Support;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace AutoSweep.PageHost.Tests.Support;

/// <summary>The bench page on a port of its own, as <c>autosweep serve</c> hosts it.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private readonly TemporaryFolder _folder;
    private readonly WebApplication _app;
    private readonly HttpClient _client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false, UseProxy = false });

    private ServedPage(TemporaryFolder folder, WebApplication app) => (_folder, _app, Port) = (folder, app, BenchPage.AddressOf(app).Port);

    public int Port { get; }

    public string Data => _folder.Path;

    public string Origin => $"http://127.0.0.1:{Port}";

    public Desk Desk => _app.Services.GetRequiredService<Desk>();

    public PageToken Token => _app.Services.GetRequiredService<PageToken>();

    public string Cookie => $"{TokenGate.CookieName}={Token.Cookie}";

    /// <summary>Serves to this computer, or with a token to every other one too.</summary>
    public static async Task<ServedPage> StartAsync(bool withToken = false, double clockRate = 1)
    {
        var folder = new TemporaryFolder();
        var options = new BenchPageOptions
        {
            Address = withToken ? IPAddress.Any : IPAddress.Loopback, Port = 0, Desk = new() { Data = folder.Path, ClockRate = clockRate },
        };
        Directory.CreateDirectory(options.Desk.Jobs);
        var app = BenchPage.Build(options);
        await Patience.WithinAsync(app.StartAsync());
        return new(folder, app);
    }

    public Task BeginJobAsync(string name = "a job") => Desk.BeginAsync(name, GeneratorProfileLibrary.Open("classic-91-60hz"));

    public Task<HttpResponseMessage> GetAsync(string path, params (string Name, string Value)[] headers) => SendAsync(HttpMethod.Get, path, null, headers);

    public Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, HttpContent? content, params (string Name, string Value)[] headers)
    {
        var request = new HttpRequestMessage(method, Origin + path) { Content = content };
        foreach (var (name, value) in headers)
            request.Headers.TryAddWithoutValidation(name, value.Replace("PORT", $"{Port}", StringComparison.Ordinal));
        return Patience.WithinAsync(_client.SendAsync(request));
    }

    public async Task<Socket> ConnectAsync()
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        await Patience.WithinAsync(socket.ConnectAsync(IPAddress.Loopback, Port));
        return socket;
    }

    /// <summary>Sends exactly these lines, which a well-behaved client would not, and gives what comes back until the server closes.</summary>
    public async Task<string> RawAsync(params string[] lines)
    {
        using var socket = await ConnectAsync();
        var head = string.Join("\r\n", [.. lines.Select(line => line.Replace("PORT", $"{Port}", StringComparison.Ordinal)), "", ""]);
        await socket.SendAsync(Encoding.Latin1.GetBytes(head));
        return await Patience.WithinAsync(UntilClosedAsync(socket));
    }

    // A server that refuses a request before it has taken all of it off the wire ends with a reset, behind its answer.
    private static async Task<string> UntilClosedAsync(Socket socket)
    {
        var (answer, buffer) = (new StringBuilder(), new byte[4096]);
        try
        {
            while (await socket.ReceiveAsync(buffer) is > 0 and var count)
                answer.Append(Encoding.Latin1.GetString(buffer, 0, count));
        }
        catch (SocketException fault) when (fault.SocketErrorCode == SocketError.ConnectionReset)
        {
            // An end as well; the answer came before it.
        }

        return answer.ToString();
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await Patience.WithinAsync(_app.DisposeAsync().AsTask());
        _folder.Dispose();
    }
}
