using System.Globalization;
using System.Numerics;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Fixture;

/// <summary>A channel list, <c>(@1,3,5:8)</c> (SCPI-1999 volume 1, 8.3.2): parsed, and as the fixture writes it.</summary>
internal static class ChannelList
{
    /// <summary>The channels in the order they are written.</summary>
    public static IReadOnlyList<int> Read(string text, int count)
    {
        if (text.Length == 0 || text[0] != '(') throw new ScpiErrorException(ScpiError.DataType);
        if (!text.StartsWith("(@", StringComparison.Ordinal) || text[^1] != ')') throw new ScpiErrorException(ScpiError.InvalidExpression);
        var inside = text[2..^1].Trim();
        var channels = inside.Length == 0 ? [] : inside.Split(',').SelectMany(Entry).ToList();
        return channels.All(channel => channel >= 1 && channel <= count)
            ? channels
            : throw new ScpiErrorException(ScpiError.OutOfRange);
    }

    public static uint Set(IReadOnlyList<int> channels) => channels.Aggregate(0u, (set, channel) => set | 1u << (channel - 1));

    public static string Write(uint set) =>
        $"(@{string.Join(',', Enumerable.Range(1, 32).Where(channel => (set >> (channel - 1) & 1) != 0).Select(One))})";

    private static string One(int channel) => channel.ToString(CultureInfo.InvariantCulture);

    private static IEnumerable<int> Entry(string entry)
    {
        var ends = entry.Split(':');
        if (ends.Length > 2) throw new ScpiErrorException(ScpiError.InvalidExpression);
        var (first, last) = (Channel(ends[0]), Channel(ends[^1]));
        return first <= last
            ? Enumerable.Range(first, last - first + 1)
            : Enumerable.Range(last, first - last + 1).Reverse();
    }

    // Four digits are more than any fixture has relays, and keep a range such as 1:999999999 from filling the memory.
    private static int Channel(string text) =>
        text.Trim().Length <= 4 && int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var channel)
            ? channel
            : throw new ScpiErrorException(ScpiError.InvalidExpression);
}
