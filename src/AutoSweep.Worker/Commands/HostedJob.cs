using System.Globalization;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Service;
using AutoSweep.Worker.Terminal;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Serilog;

namespace AutoSweep.Worker.Commands;

/// <summary>Runs a plan on a job inside a host, with a screen in front of it.</summary>
public static class HostedJob
{
    /// <summary>Runs to the end of the plan, a fault, or Ctrl-C.</summary>
    /// <param name="record">The job; closed at the end.</param>
    /// <param name="plan">What to do.</param>
    /// <param name="cancellationToken">Stops the work as Ctrl-C does.</param>
    /// <returns>How it ended.</returns>
    public static async Task<JobOutcome> RunAsync(JobRecord record, JobPlan plan, CancellationToken cancellationToken)
    {
        using var job = record;
        var builder = new HostApplicationBuilder();
        builder.Services
            .AddSingleton(record).AddSingleton(plan).AddSingleton<BenchBoard>().AddSingleton<JobOutcome>()
            .AddSingleton<IOperatorKeys, ConsoleKeys>().AddSingleton<IBenchDialogue, ConsoleDialogue>()
            .AddHostedService<JobWorker>()
            // Time enough to open the relays and close the links.
            .Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(15))
            .Configure<ConsoleLifetimeOptions>(options => options.SuppressStatusMessages = true);
        if (ServiceManager.IsPresent)
        {
            ServiceManager.Join(builder, LogFile(new(), record).CreateLogger());
            ServiceManager.TellOfBench(builder.Services);
        }
        else
            builder.Services.AddSerilog(log => LogFile(log, record));
        using var host = builder.Build();
        var outcome = host.Services.GetRequiredService<JobOutcome>();
        var screen = Screen(plan, record, host.Services);
        using var closing = CancellationTokenSource.CreateLinkedTokenSource(
            cancellationToken, host.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        var shown = screen.ShowAsync(closing.Token);
        await RunAsync(host, cancellationToken);
        await shown;
        return outcome;
    }

    private static async Task RunAsync(IHost host, CancellationToken cancellationToken)
    {
        try
        {
            await host.StartAsync(cancellationToken);
            await host.WaitForShutdownAsync(cancellationToken);
        }
        catch (OperationCanceledException)
        {
            // Stopped while the start still waited for the bench: what had begun is ended in order all the same.
            await host.StopAsync(CancellationToken.None);
        }
    }

    private static LoggerConfiguration LogFile(LoggerConfiguration log, JobRecord record) => log.MinimumLevel.Debug().WriteTo.File(
        record.Folder.Log, rollingInterval: RollingInterval.Day, retainedFileCountLimit: 31, formatProvider: CultureInfo.InvariantCulture);

    private static IBenchScreen Screen(JobPlan plan, JobRecord record, IServiceProvider services)
    {
        var board = services.GetRequiredService<BenchBoard>();
        return ServiceManager.IsPresent
            ? new LoggedScreen(services.GetRequiredService<ILogger<LoggedScreen>>(), record, board)
            : BenchScreen.For(plan, record, board);
    }
}
