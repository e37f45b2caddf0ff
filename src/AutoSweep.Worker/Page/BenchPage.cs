using System.Globalization;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Service;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Serilog;

namespace AutoSweep.Worker.Page;

/// <summary>The bench page's host: pages in front, the desk behind, one process.</summary>
public static class BenchPage
{
    /// <summary>Builds the host; nothing listens before it is started.</summary>
    /// <param name="options">Where it listens and where things are.</param>
    public static WebApplication Build(BenchPageOptions options)
    {
        // The program's own folder, not the one that it was started in: pages and styles lie beside the program.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory, ApplicationName = typeof(BenchPage).Assembly.GetName().Name,
        });
        builder.WebHost.UseStaticWebAssets().ConfigureKestrel(kestrel => PageGuard.Limit(kestrel, options));
        if (ServiceManager.IsPresent)
            ServiceManager.Join(builder, LogFile(new(), options.Desk).CreateLogger());
        else
            builder.Services.AddSerilog(log => LogFile(log, options.Desk));
        builder.Services
            .AddSingleton(options).AddSingleton(options.Desk).AddSingleton(TimeProvider.System).AddSingleton<Desk>()
            .Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(15));
        PageGuard.AddTo(builder.Services, options);
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        var app = builder.Build();
        // First, because the page that says so goes through the guard again, antiforgery included.
        app.UseStatusCodePagesWithReExecute("/not-there");
        PageGuard.Use(app, options);
        Intake.StockFile.Map(app);
        app.MapStaticAssets();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(
            // The guard says it, with the rest of the policy.
            mode => mode.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    /// <summary>The address under which the started page answers, with the port that it got.</summary>
    public static Uri AddressOf(WebApplication app) => new(
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());

    private static LoggerConfiguration LogFile(LoggerConfiguration log, DeskOptions desk) => log.MinimumLevel.Debug()
        .MinimumLevel.Override("Microsoft", Serilog.Events.LogEventLevel.Warning)
        .WriteTo.File(Path.Combine(desk.Data, "log", "page-.log"), rollingInterval: RollingInterval.Day, retainedFileCountLimit: 31,
            formatProvider: CultureInfo.InvariantCulture);
}
