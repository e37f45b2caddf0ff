using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Meters;

/// <summary>Sends a driver's commands one by one, and remembers which optional ones this meter refuses.</summary>
internal sealed class DriverCommandSender(ScpiSession session, MeterDriver driver, ILogger log)
{
    private readonly HashSet<string> _leftOut = [];

    /// <summary>Sends commands in their order, with their placeholders filled in.</summary>
    /// <exception cref="BenchFaultException">The meter refuses a required one.</exception>
    public async Task SendAsync(IEnumerable<DriverCommand> commands, Func<string, string> fill, CancellationToken cancellationToken)
    {
        foreach (var command in commands.Where(command => !_leftOut.Contains(command.Command)))
            await SendAsync(command, fill, cancellationToken);
    }

    /// <summary>The commands that the meter has refused.</summary>
    public IReadOnlyCollection<string> LeftOut => _leftOut;

    /// <summary>Whether the meter has refused a command.</summary>
    public bool IsLeftOut(DriverCommand command) => _leftOut.Contains(command.Command);

    /// <summary>Whether the meter has refused every command that holds a placeholder, or the driver has none.</summary>
    public bool LacksAll(IEnumerable<DriverCommand> commands, string placeholder) => commands
        .Where(command => command.Command.Contains(placeholder, StringComparison.Ordinal))
        .All(command => _leftOut.Contains(command.Command));

    private async Task SendAsync(DriverCommand command, Func<string, string> fill, CancellationToken cancellationToken)
    {
        var message = fill(command.Command);
        var errors = await session.SendAndCheckAsync(message, cancellationToken);
        if (errors.Count == 0)
            return;
        if (command.Required)
            throw Refused(message, errors);
        _leftOut.Add(command.Command);
        log.LogWarning("{Resource}: the meter refuses {Message} ({Error}); it is left out from now on", session.Resource, message,
            errors[0]);
    }

    private BenchFaultException Refused(string message, IReadOnlyList<ScpiError> errors) => new(
        BenchFault.WrongIdentity,
        $"the meter at {session.Resource} refuses the command {message}: {string.Join("; ", errors)}",
        $"a meter that the driver {driver.Name} ({driver.Title}) drives",
        "Choose the driver of this meter's family.");
}
