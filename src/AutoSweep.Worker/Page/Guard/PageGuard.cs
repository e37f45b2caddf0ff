using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Who may look and who may touch: limits of the server, and what every request is held against before a page sees it.</summary>
public static class PageGuard
{
    /// <summary>The server's limits.</summary>
    public static void Limit(KestrelServerOptions kestrel, BenchPageOptions options)
    {
        kestrel.Listen(options.Address, options.Port);
        kestrel.AddServerHeader = false;
    }

    /// <summary>What the guard needs.</summary>
    public static void AddTo(IServiceCollection services, BenchPageOptions options) => services.AddSingleton<Controls>().AddScoped<ScreenRights>();

    /// <summary>Puts the guard before the pages.</summary>
    public static void Use(WebApplication app, BenchPageOptions options) => app.UseAntiforgery();
}
