using System.Globalization;
using System.Numerics;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Fixture;

/// <summary>Which relays are closed.</summary>
/// <param name="Mask">Bit 0 is relay 1.</param>
public readonly record struct RelaySet(uint Mask)
{
    /// <summary>No relay.</summary>
    public static RelaySet None => default;

    /// <summary>The relays' numbers, ascending.</summary>
    public IReadOnlyList<int> Numbers
    {
        get
        {
            var mask = Mask;
            return [.. Enumerable.Range(1, 32).Where(number => (mask & (1u << (number - 1))) != 0)];
        }
    }

    /// <summary>Whether it is empty.</summary>
    public bool IsEmpty => Mask == 0;

    /// <summary>The relays of a channel list.</summary>
    /// <returns>Null when it names one beyond 32.</returns>
    public static RelaySet? Of(ChannelList list) => list.Channels.Any(number => number > 32)
        ? null
        : new(list.Channels.Aggregate(0u, (mask, number) => mask | (1u << (number - 1))));

    /// <summary>The relays of this set that are not in another.</summary>
    public RelaySet Without(RelaySet other) => new(Mask & ~other.Mask);

    /// <summary>How many relays must move to come from one set to the other.</summary>
    public int OperationsTo(RelaySet other) => BitOperations.PopCount(Mask ^ other.Mask);

    /// <summary>The set as a channel list, such as <c>(@1,3:5)</c>.</summary>
    public override string ToString() => new ChannelList(Numbers).ToString();

    /// <summary>The numbers as a person reads them: "relay 3" or "relays 3, 7".</summary>
    public string Named()
    {
        var numbers = string.Join(", ", Numbers.Select(number => number.ToString(CultureInfo.InvariantCulture)));
        return Numbers.Count == 1 ? $"relay {numbers}" : $"relays {numbers}";
    }
}
