using System.CommandLine;
using System.Net;
using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Service;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep serve</c>: the bench page.</summary>
public static class ServeCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var flags = new ServeFlags();
        var command = new Command("serve", "Opens the bench page: the whole job in a browser on this computer, until Ctrl-C or a service manager ends it.");
        flags.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(
            () => RunAsync(flags.Options(parsed), flags.SimulatedBench(parsed), flags.MakesToken(parsed), cancellationToken)));
        return command;
    }

    private static async Task<JobOutcome> RunAsync(BenchPageOptions options, string? simBench, bool makesToken, CancellationToken cancellationToken)
    {
        options.Desk.RequireWritable();
        await using var simulator = simBench is null ? null : await SimulateAsync(simBench, options.Desk, cancellationToken);
        if (makesToken)
            PageToken.Make(options.Desk.Data);
        await using var page = BenchPage.Build(options);
        await StartAsync(page, options, cancellationToken);
        await page.Services.GetRequiredService<Desk>().OpenLastAsync();
        TellWhere(page, options);
        Console.Out.WriteLine(Cautions.SpinningGenerator);
        await page.WaitForShutdownAsync(cancellationToken);
        var outcome = new JobOutcome();
        outcome.Completed();
        return outcome;
    }

    private static async Task StartAsync(WebApplication page, BenchPageOptions options, CancellationToken cancellationToken)
    {
        try
        {
            await page.StartAsync(cancellationToken);
        }
        catch (Exception fault) when (fault is IOException or System.Net.Sockets.SocketException)
        {
            throw new BenchFaultException(BenchFault.NotReachable, $"{new IPEndPoint(options.Address, options.Port)} cannot be listened on ({fault.Message})",
                "an address of this computer with a free port", "end the other autosweep serve, or name another --address or --port", fault);
        }
    }

    private static void TellWhere(WebApplication page, BenchPageOptions options)
    {
        var address = BenchPage.AddressOf(page);
        page.Services.GetService<ISystemdNotifier>()?.Notify(new($"STATUS=The bench page: {address}"));
        Console.Out.WriteLine($"The bench page: {address}");
        if (page.Services.GetService<PageToken>() is not { } token)
            return;
        // A service's output is kept in a log that others may read.
        if (ServiceManager.IsPresent)
            Console.Out.WriteLine($"Screens enter with {TokenGate.Entrance}?token= and the token in {Path.Combine(options.Desk.Data, PageToken.FileName)}");
        else
            Array.ForEach([.. EntranceLinks.For(options.Address, address.Port, token)], TellLink);
    }

    private static void TellLink(string link)
    {
        Console.Out.WriteLine($"Every screen enters with this link, or by scanning it. Whoever has it may work at this bench: {link}");
        Console.Out.WriteLine(EntranceLinks.Terminal(link));
    }

    // The simulator's wires go into a file as a real bench's do: the page knows no difference.
    private static async Task<SimulatedBench> SimulateAsync(string bench, DeskOptions desk, CancellationToken cancellationToken)
    {
        var simulator = await SimulatedBench.StartAsync(bench, desk.ClockRate, null, cancellationToken);
        BenchWiringFile.Write(desk.Wiring, simulator.Wiring);
        return simulator;
    }
}
