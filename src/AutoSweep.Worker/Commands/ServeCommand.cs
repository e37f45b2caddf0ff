using System.CommandLine;
using System.Net;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Stock;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

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
        var rate = StageCommand.ClockRate();
        address.Validators.Add(result =>
        {
            if (!IPAddress.TryParse(result.Tokens.Count == 1 ? result.Tokens[0].Value : "127.0.0.1", out _))
                result.AddError($"--address {result.Tokens[0].Value}: expected an IP address of this computer, such as 127.0.0.1 or 192.0.2.5.");
        });
        var command = new Command("serve", "Opens the bench page: the whole job in a browser on this computer, until Ctrl-C or a service manager ends it.")
        {
            data, address, port, simulated, simBench, rate,
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
            cancellationToken)));
        return command;
    }

    private static async Task<JobOutcome> RunAsync(BenchPageOptions options, string? simBench, CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(options.Desk.Jobs);
        await using var simulator = simBench is null ? null : await SimulateAsync(simBench, options.Desk, cancellationToken);
        await using var page = BenchPage.Build(options);
        await page.StartAsync(cancellationToken);
        await page.Services.GetRequiredService<Desk>().OpenLastAsync();
        Console.Out.WriteLine($"The bench page: {BenchPage.AddressOf(page)}");
        Console.Out.WriteLine(Cautions.SpinningGenerator);
        await page.WaitForShutdownAsync(cancellationToken);
        var outcome = new JobOutcome();
        outcome.Completed();
        return outcome;
    }

    // The simulator's wires go into bench.json as a real bench's would: the page knows no difference.
    private static async Task<SimulatedBench> SimulateAsync(string bench, DeskOptions desk, CancellationToken cancellationToken)
    {
        var simulator = await SimulatedBench.StartAsync(bench, desk.ClockRate, null, cancellationToken);
        BenchWiringFile.Write(desk.Wiring, simulator.Wiring);
        return simulator;
    }
}
