using System.Globalization;

namespace AutoSweep.Sim.Commands;

/// <summary>A line on standard input that pulls a plug, <c>unplug meter 3</c> for three simulated seconds and <c>unplug meter</c> for as long as nobody
/// pushes it in again, or that does push it in: <c>plug meter</c>.</summary>
/// <param name="What">Which plug.</param>
/// <param name="Gap">How long it stays out, <see cref="Timeout.InfiniteTimeSpan"/> until it is pushed in; null pushes it in.</param>
internal sealed record UnplugOrder(UnplugOrder.Plug What, TimeSpan? Gap)
{
    public const string Expected =
        "a line such as: unplug meter 3, unplug fixture 5, unplug capacitanceMeter 2 (simulated seconds, above 0), unplug meter, plug meter";

    public enum Plug
    {
        Meter,
        Fixture,
        CapacitanceMeter,
    }

    public static UnplugOrder? Read(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) switch
    {
        ["unplug", var name, var text] when Named(name) is { } what && Seconds(text) is { } gap => new(what, gap),
        ["unplug", var name] when Named(name) is { } what => new(what, Timeout.InfiniteTimeSpan),
        ["plug", var name] when Named(name) is { } what => new(what, null),
        _ => null,
    };

    private static Plug? Named(string name) => !char.IsAsciiDigit(name[0]) && Enum.TryParse<Plug>(name, ignoreCase: true, out var what) ? what : null;

    private static TimeSpan? Seconds(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) && seconds is > 0 and <= 86400
            ? TimeSpan.FromSeconds(seconds)
            : null;
}
