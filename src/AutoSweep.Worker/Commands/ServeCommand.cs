using System.CommandLine;
using System.Net;
using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Service;
using AutoSweep.Worker.Stock;
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
        var data = new Option<string?>("--data")
        {
            Description = "The folder of jobs, stock, wiring and shop. Left out: this user's data folder; with --simulated: simulated-bench/ in it.",
            HelpName = "DIR",
        };
        var address = new Option<string>("--address")
        {
            Description = "The address to listen on. Another than loopback lets other computers look, and asks them for a token.",
            HelpName = "IP",
            DefaultValueFactory = _ => "127.0.0.1",
        };
        var port = new Option<int>("--port")
        {
            Description = "The port; 0 for any free one.", HelpName = "N", DefaultValueFactory = _ => BenchPageOptions.DefaultPort,
        };
        var simulated = new Option<bool>("--simulated") { Description = "Needs no hardware: a simulated bench with an invented generator is wired up." };
        var simBench = new Option<string>("--sim-bench")
        {
            Description = "With --simulated: which bench; docs/simulated-bench.md lists them.", HelpName = "NAME", DefaultValueFactory = _ => "demo",
        };
        var newToken = new Option<bool>("--new-token")
        {
            Description = "With another address than loopback: makes a new token. Screens that were let in before must enter again.",
        };
        var rate = StageCommand.ClockRate();
        address.Validators.Add(result =>
        {
            if (!IPAddress.TryParse(result.Tokens.Count == 1 ? result.Tokens[0].Value : "127.0.0.1", out _))
                result.AddError($"--address {result.Tokens[0].Value}: expected an IP address of this computer, such as 127.0.0.1 or 192.0.2.5.");
        });
        var command = new Command("serve", "Opens the bench page: the whole job in a browser on this computer, until Ctrl-C or a service manager ends it.")
        {
            data, address, port, newToken, simulated, simBench, rate,
        };
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(() => RunAsync(
            new()
            {
                Address = IPAddress.Parse(parsed.GetValue(address)!),
                Port = parsed.GetValue(port),
                Desk = new()
                {
                    Data = Path.GetFullPath(parsed.GetValue(data) ?? (parsed.GetValue(simulated) ? Path.Combine(DataFolder.Default, "simulated-bench") : DataFolder.Default)),
                    ClockRate = parsed.GetValue(rate),
                },
            },
            parsed.GetValue(simulated) ? parsed.GetValue(simBench) : null,
            parsed.GetValue(newToken),
            cancellationToken)));
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

    // The simulator's wires go into bench.json as a real bench's would: the page knows no difference.
    private static async Task<SimulatedBench> SimulateAsync(string bench, DeskOptions desk, CancellationToken cancellationToken)
    {
        var simulator = await SimulatedBench.StartAsync(bench, desk.ClockRate, null, cancellationToken);
        BenchWiringFile.Write(desk.Wiring, simulator.Wiring);
        return simulator;
    }
}
