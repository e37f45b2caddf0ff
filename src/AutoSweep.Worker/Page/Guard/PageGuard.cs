using System.Net;
using System.Threading.RateLimiting;
using AutoSweep.Worker.Page.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.DependencyInjection;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Who may look and who may touch: limits of the server, and what every request is held against before a page sees it.</summary>
public static class PageGuard
{
    private const string Tries = "tries at the entrance";

    // A person who scans a link needs one; a minute is long enough to make trying pointless, which 256 bits do anyway.
    private static readonly FixedWindowRateLimiterOptions TriesOfOne = new() { PermitLimit = 10, Window = TimeSpan.FromMinutes(1) };

    /// <summary>The server's limits.</summary>
    public static void Limit(KestrelServerOptions kestrel, BenchPageOptions options)
    {
        kestrel.Listen(options.Address, options.Port);
        kestrel.AddServerHeader = false;
        PageLimits.Set(kestrel.Limits);
    }

    /// <summary>What the guard needs.</summary>
    public static void AddTo(IServiceCollection services, BenchPageOptions options)
    {
        services.AddSingleton<Controls>().AddScoped<ScreenRights>().AddScoped<CircuitHandler, ScreenCircuit>()
            .AddCascadingValue(provider => provider.GetRequiredService<ScreenRights>());
        services.Configure<HubOptions>(PageLimits.Set).Configure<CircuitOptions>(PageLimits.Set);
        services.AddRateLimiter(limiter => limiter.AddPolicy(Tries, TriesOf).OnRejected = RefuseAsync);
        // Beside the rest of the page's data, so that a form that was open before a restart still counts, and a service needs no home folder.
        services.AddDataProtection().SetApplicationName("AutoSweep").PersistKeysToFileSystem(KeyFolder(options.Desk.Data));
        if (options.NeedsToken)
            services.AddSingleton(PageToken.Open(options.Desk.Data));
    }

    /// <summary>Puts the guard before the pages.</summary>
    public static void Use(WebApplication app, BenchPageOptions options)
    {
        app.UseMiddleware<PageHeaders>().UseExceptionHandler(Unforeseen).UseMiddleware<OriginGate>();
        if (options.NeedsToken)
            app.UseMiddleware<TokenGate>();
        app.UseRateLimiter().UseAntiforgery();
        app.MapGet("/files/{name}", JobFiles.Fetch);
        if (options.NeedsToken)
        {
            app.MapGet(TokenGate.Entrance, TokenGate.EnterAsync).RequireRateLimiting(Tries);
            app.MapGet("/let-in", LetInPage.ShowAsync);
        }

        // Buttons come to life and go dead with the controls.
        app.Services.GetRequiredService<Controls>().Changed += app.Services.GetRequiredService<Desk>().Tell;
    }

    // A request that breaks a limit has its own status; whatever else happens is in the log, and its text goes to no screen.
    private static ExceptionHandlerOptions Unforeseen => new()
    {
        StatusCodeSelector = fault =>
            fault is Microsoft.AspNetCore.Http.BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError,
        ExceptionHandler = context => new Refusal(context.Response.StatusCode, "a request that could not be answered", "a page of the bench",
            "Load the page again. What is recorded is kept, and the work at the bench goes on; the log in the data folder says more.")
            .WriteAsync(context),
    };

    private static DirectoryInfo KeyFolder(string data)
    {
        var folder = Directory.CreateDirectory(Path.Combine(data, "page-keys"));
        if (!OperatingSystem.IsWindows())
            folder.UnixFileMode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        return folder;
    }

    private static RateLimitPartition<IPAddress> TriesOf(HttpContext context) =>
        RateLimitPartition.GetFixedWindowLimiter(context.Connection.RemoteIpAddress ?? IPAddress.None, _ => TriesOfOne);

    private static async ValueTask RefuseAsync(OnRejectedContext rejected, CancellationToken cancellationToken) => await new Refusal(
        StatusCodes.Status429TooManyRequests, "many tries to enter within a minute", $"at most {TriesOfOne.PermitLimit}",
        "Wait a minute, then scan the link again.")
        .WriteAsync(rejected.HttpContext);
}
