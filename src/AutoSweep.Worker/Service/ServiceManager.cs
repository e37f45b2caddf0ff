using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;
using Microsoft.Extensions.Hosting.WindowsServices;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Serilog;

namespace AutoSweep.Worker.Service;

/// <summary>The service manager that started this program, systemd or Windows, if one did.</summary>
public static class ServiceManager
{
    /// <summary>Whether systemd started this program.</summary>
    /// <remarks>Every service of systemd has an <c>INVOCATION_ID</c> (systemd.exec(5)): without one nothing more is looked into, and a start
    /// from a terminal loses no time.</remarks>
    public static bool IsSystemd { get; } = OperatingSystem.IsLinux()
        && Environment.GetEnvironmentVariable("INVOCATION_ID") is { Length: > 0 }
        && SystemdHelpers.IsSystemdService();

    /// <summary>Whether any service manager started this program.</summary>
    public static bool IsPresent { get; } = IsSystemd || (OperatingSystem.IsWindows() && WindowsServiceHelpers.IsWindowsService());

    /// <summary>Lets the manager start, watch and stop the host, and sends the log where the manager keeps logs.</summary>
    /// <param name="builder">The host being built; the services that it starts are added to it elsewhere.</param>
    /// <param name="file">The log file, which is kept all the same.</param>
    /// <remarks>To journald each entry is one line with its priority before it (sd-daemon(3)); to Windows' event log go warnings and worse.</remarks>
    public static void Join(IHostApplicationBuilder builder, Serilog.ILogger file)
    {
        builder.Logging.ClearProviders();
        builder.Logging.SetMinimumLevel(LogLevel.Debug).AddSerilog(file, dispose: true);
        builder.Services.AddSystemd().AddWindowsService(options => options.ServiceName = "AutoSweep");
        if (IsSystemd)
        {
            // Debug, every exchange on the wires, stays in the file: journald keeps the whole computer's log.
            builder.Logging.AddSystemdConsole()
                .AddFilter<ConsoleLoggerProvider>(null, LogLevel.Information)
                .AddFilter<ConsoleLoggerProvider>("Microsoft", LogLevel.Warning);
        }
    }

    /// <summary>Lets the manager know how a bench is that is kept: its status line, and readiness once it is connected or waited for.</summary>
    /// <param name="services">The host's services; the worker is among them already.</param>
    public static void TellOfBench(IServiceCollection services) =>
        // They are started in this order, after the worker, and the last holds the start back until the worker has something to say.
        services.AddHostedService<StatusLine>().AddHostedService<BenchReadiness>();

    /// <summary>A fault as one line of the manager's log; for faults from before there is a host.</summary>
    public static string FaultLine(Exception fault) =>
        // <3> is LOG_ERR (syslog(3)); sd-daemon(3) has it in front of the line.
        "<3>" + (fault is Core.BenchFaultException known
            ? $"Found: {known.Found}. Expected: {known.Expected}. What to do: {known.WhatToDo}"
            : $"A fault that nobody foresaw: {fault.Message}").ReplaceLineEndings(" ");
}
