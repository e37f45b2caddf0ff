using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Fixture;

/// <summary>Moves a fixture's relays and reads back what they did. A relay command is sent once; after trouble the state is read, not
/// guessed.</summary>
internal sealed class RelaySwitch(ScpiSession session, ILogger log)
{
    // docs/fixture-protocol.md: the fixture's own error number for an expired watchdog.
    private const int WatchdogExpired = 101;

    private RelaySet? _present;

    /// <summary>The relays that are closed, from the last read-back; read now when that is not known.</summary>
    public async Task<RelaySet> PresentAsync(CancellationToken cancellationToken) => _present ??= await ReadBackAsync(cancellationToken);

    /// <summary>Closes exactly these relays, break before make, waits for the last bounce and checks the read-back.</summary>
    /// <exception cref="BenchFaultException">A relay does not follow, or the fixture does not answer.</exception>
    public async Task SetAsync(RelaySet wanted, CancellationToken cancellationToken)
    {
        if (await TryAsync(wanted, cancellationToken) is not { } found)
            return;
        var errors = await session.DrainErrorsAsync(cancellationToken);
        if (!errors.Any(error => error.Number == WatchdogExpired))
            throw DoesNotFollow(wanted, found, errors);
        log.LogWarning("{Resource}: the fixture's watchdog had opened every relay; setting {Wanted} again from {Found}", session.Resource,
            wanted, found);
        if (await TryAsync(wanted, cancellationToken) is { } still)
            throw DoesNotFollow(wanted, still, await session.DrainErrorsAsync(cancellationToken));
    }

    /// <summary>Whether the relays are still those that were set: whoever was held up for longer than the watchdog waits has lost them meanwhile.</summary>
    public async Task<bool> StandsAsync(CancellationToken cancellationToken)
    {
        var set = _present;
        _present = null; // until it is read back
        _present = await ReadBackAsync(cancellationToken);
        if (_present == set)
            return true;
        await ReportErrorsAsync($"with {_present} closed instead of {set},", cancellationToken);
        return false;
    }

    /// <summary>Opens every relay, whatever was thought to be closed, and checks the read-back.</summary>
    public async Task OpenAllAsync(CancellationToken cancellationToken)
    {
        _present = null;
        await session.SendAsync("ROUT:OPEN:ALL", cancellationToken);
        if (await SettledStateAsync(cancellationToken) is { IsEmpty: false } found)
            throw DoesNotFollow(RelaySet.None, found, await session.DrainErrorsAsync(cancellationToken));
        _present = RelaySet.None;
    }

    /// <summary>Logs what the error queue holds.</summary>
    public async Task ReportErrorsAsync(string when, CancellationToken cancellationToken)
    {
        foreach (var error in await session.DrainErrorsAsync(cancellationToken))
            log.LogWarning("{Resource}: {When} the fixture reports {Error}", session.Resource, when, error);
    }

    // Null when the relays are as wanted, else what they are.
    private async Task<RelaySet?> TryAsync(RelaySet wanted, CancellationToken cancellationToken)
    {
        var present = await PresentAsync(cancellationToken);
        _present = null; // until it is read back
        if (MessageFrom(present, wanted) is { } message)
            await session.SendAsync(message, cancellationToken);
        var found = await SettledStateAsync(cancellationToken);
        _present = found;
        return found == wanted ? null : found;
    }

    // One message, so that the fixture breaks before it makes. After "ROUT:OPEN" the compound path is ROUT: (SCPI-1999, 6.2.4).
    private static string? MessageFrom(RelaySet present, RelaySet wanted) => (present.Without(wanted), wanted.Without(present)) switch
    {
        ({ IsEmpty: true }, { IsEmpty: true }) => null,
        ({ IsEmpty: true }, var close) => $"ROUT:CLOS {close}",
        (var open, { IsEmpty: true }) => $"ROUT:OPEN {open}",
        var (open, close) => $"ROUT:OPEN {open};CLOS {close}",
    };

    private async Task<RelaySet> SettledStateAsync(CancellationToken cancellationToken)
    {
        await session.QueryAsync("*OPC?", cancellationToken);
        return await ReadBackAsync(cancellationToken);
    }

    private async Task<RelaySet> ReadBackAsync(CancellationToken cancellationToken)
    {
        var reply = await session.QueryAsync("ROUT:CLOS:STAT?", cancellationToken);
        return ChannelList.TryParse(reply) is { } list && RelaySet.Of(list) is { } relays ? relays : throw NoList(reply);
    }

    private BenchFaultException NoList(string reply) => new(
        BenchFault.NoAnswer,
        $"the fixture at {session.Resource} answers ROUT:CLOS:STAT? with \"{reply}\"",
        "a channel list, such as (@1,3:5)",
        "Check that this is the fixture's port, and that its firmware keeps to docs/fixture-protocol.md.");

    private BenchFaultException DoesNotFollow(RelaySet wanted, RelaySet found, IReadOnlyList<ScpiError> errors)
    {
        var (stuckOpen, stuckClosed) = (wanted.Without(found), found.Without(wanted));
        string[] parts =
        [
            .. (string[])(stuckOpen.IsEmpty ? [] : [$"{stuckOpen.Named()} told to close but read back open"]),
            .. (string[])(stuckClosed.IsEmpty ? [] : [$"{stuckClosed.Named()} told to open but read back closed"]),
            .. errors.Select(error => $"the fixture reports {error}"),
        ];
        return new(
            BenchFault.FixtureFault,
            $"the fixture at {session.Resource}: {string.Join("; ", parts)}",
            $"the relays {wanted} closed and all others open",
            "Switch the fixture off and on. If it stays, the relay or its driver is broken: mend it and calibrate that relay again.");
    }
}
