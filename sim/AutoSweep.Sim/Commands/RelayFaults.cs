using System.Globalization;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Commands;

/// <summary>Faults of relays as the command line writes them: <c>5:stuckOpen,9:leaking</c>.</summary>
internal static class RelayFaults
{
    public const string Expected = "a list such as 5:stuckOpen,9:stuckClosed,12:leaking";

    public static bool TryRead(string text, out IReadOnlyDictionary<int, RelayFault> faults)
    {
        var read = new Dictionary<int, RelayFault>();
        faults = read;
        return text.Split(',').All(one => one.Split(':') is [var relay, var fault]
            && int.TryParse(relay, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && Enum.TryParse<RelayFault>(fault, ignoreCase: true, out var kind) && read.TryAdd(number, kind));
    }

    /// <summary>A fixture with faults planted.</summary>
    public static FixtureDefinition Plant(this FixtureDefinition fixture, IReadOnlyDictionary<int, RelayFault> faults) => fixture with
    {
        Relays =
        [
            .. fixture.Relays.Select((relay, index) => faults.TryGetValue(index + 1, out var fault) ? relay with { Fault = fault } : relay),
        ],
    };
}
