using System.Globalization;

namespace AutoSweep.Instruments.Scpi;

/// <summary>A channel list of a switch, such as <c>(@1,3:5)</c> (SCPI-1999, volume 1, 8.3.2).</summary>
/// <remarks>One dimension only, as a relay fixture has. Keeps the order in which channels are named.</remarks>
public sealed class ChannelList
{
    // No switch has more; bounds the work that a garbled range such as 1:2000000000 can cause.
    private const int HighestChannel = 9999;

    /// <summary>A list of channels.</summary>
    /// <param name="channels">Channel numbers, 1 to 9999.</param>
    public ChannelList(IEnumerable<int> channels) => Channels = [.. channels];

    /// <summary>The channels in the order in which they were named.</summary>
    public IReadOnlyList<int> Channels { get; }

    /// <summary>Reads a list; a range may ascend or descend.</summary>
    /// <returns>Null when it is none.</returns>
    public static ChannelList? TryParse(string text)
    {
        var compact = text.Replace(" ", "", StringComparison.Ordinal);
        if (!compact.StartsWith("(@", StringComparison.Ordinal) || !compact.EndsWith(')'))
            return null;
        var inside = compact[2..^1];
        if (inside.Length == 0)
            return new([]);
        var ranges = inside.Split(',').Select(Range).ToArray();
        return ranges.Any(range => range is null) ? null : new(ranges.SelectMany(range => range!));
    }

    /// <summary>The list as the wire carries it; three or more ascending neighbours become a range.</summary>
    public override string ToString() => $"(@{string.Join(',', Runs())})";

    private static IEnumerable<int>? Range(string text)
    {
        var ends = text.Split(':');
        if (ends.Length > 2 || Channel(ends[0]) is not { } first || Channel(ends[^1]) is not { } last)
            return null;
        return first <= last ? Enumerable.Range(first, last - first + 1) : Enumerable.Range(last, first - last + 1).Reverse();
    }

    private static int? Channel(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= HighestChannel
            ? number
            : null;

    private IEnumerable<string> Runs()
    {
        for (var start = 0; start < Channels.Count;)
        {
            var end = start;
            while (end + 1 < Channels.Count && Channels[end + 1] == Channels[end] + 1)
                end++;
            if (end - start < 2)
                end = start;
            yield return end == start ? Text(Channels[start]) : $"{Text(Channels[start])}:{Text(Channels[end])}";
            start = end + 1;
        }
    }

    private static string Text(int channel) => channel.ToString(CultureInfo.InvariantCulture);
}
