using System.Globalization;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
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
        builder.Logging.Services.AddSerilog(log => log.MinimumLevel.Debug().WriteTo.File(
            record.Folder.Log,
            rollingInterval: RollingInterval.Day,
            retainedFileCountLimit: 31,
            formatProvider: CultureInfo.InvariantCulture));
        builder.Services
            .AddSingleton(record).AddSingleton(plan).AddSingleton<BenchBoard>().AddSingleton<JobOutcome>()
            .AddSingleton<IOperatorKeys, ConsoleKeys>()
            .AddHostedService<JobWorker>()
            // Time enough to open the relays and close the links.
            .Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(15))
            .Configure<ConsoleLifetimeOptions>(options => options.SuppressStatusMessages = true);
        using var host = builder.Build();
        // Running the host to its end disposes its services; what is asked for afterwards is taken out before.
        var outcome = host.Services.GetRequiredService<JobOutcome>();
        var screen = BenchScreen.For(plan, record, host.Services.GetRequiredService<BenchBoard>());
        using var closing = CancellationTokenSource.CreateLinkedTokenSource(
            cancellationToken, host.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        var shown = screen.ShowAsync(closing.Token);
        await host.RunAsync(cancellationToken);
        await shown;
        return outcome;
    }
}
