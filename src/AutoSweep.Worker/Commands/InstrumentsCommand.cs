using System.CommandLine;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Discovery;
using AutoSweep.Instruments.Links;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep instruments</c>: which resource names there are on this computer.</summary>
public static class InstrumentsCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var resources = new Argument<string[]>("RESOURCE")
        {
            Description = "With --ask: only these, such as a LAN socket, which cannot be found. Left out: everything that is found.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var ask = new Option<bool>("--ask")
        {
            Description = "Send *IDN? to each and show who answers and which drivers fit. On a serial port also at several speeds. A relay box, a "
                + "plotter or a modem may act on what it is sent: name the resource if you are not sure what hangs on the others.",
        };
        var command = new Command("instruments", "Lists USB instruments, serial ports and what a VISA library knows, with the names for bench.json.")
        {
            resources,
            ask,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(resources) is { Length: > 0 } && !result.GetValue(ask))
                result.AddError("Resources are named to be asked: add --ask. Without it everything on this computer is listed, and nothing is sent.");
        });
        command.SetAction((parsed, cancellationToken) => FixtureCommand.RunAsync(async outcome =>
        {
            await RunAsync(new(), new(), parsed.GetValue(resources) ?? [], parsed.GetValue(ask), Console.Out, cancellationToken);
            outcome.Completed();
        }));
        return command;
    }

    /// <summary>Searches, asks where that is wanted, and writes what came of it, one resource after the other.</summary>
    /// <param name="search">Where to look.</param>
    /// <param name="options">With what to ask.</param>
    /// <param name="named">The resources to be asked; empty for all that are found.</param>
    /// <param name="ask">Whether anything is sent at all.</param>
    /// <param name="to">Where it is written.</param>
    /// <param name="cancellationToken">Ends the search.</param>
    public static async Task RunAsync(
        InstrumentSearch search, InstrumentBenchOptions options, IReadOnlyList<string> named, bool ask, TextWriter to,
        CancellationToken cancellationToken)
    {
        // A slip in a name is told before anything is sent to the others.
        FoundResource[] wanted = [.. named.Select(name => new FoundResource(ResourceName.Parse(name).Text, ""))];
        var found = wanted.Length > 0 ? new FoundResources(wanted, []) : await search.FindAsync(cancellationToken);
        var inquiry = ask ? new InstrumentInquiry(options) : null;
        foreach (var resource in found.Resources)
        {
            await InstrumentText.WriteAsync(to, resource);
            if (inquiry is not null)
                await InstrumentText.WriteAsync(to, await inquiry.AskAsync(resource.Resource, cancellationToken));
        }

        await InstrumentText.WriteEndAsync(to, found, ask);
    }
}
