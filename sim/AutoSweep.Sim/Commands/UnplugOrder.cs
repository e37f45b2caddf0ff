using System.Globalization;

namespace AutoSweep.Sim.Commands;

/// <summary>A line on standard input that pulls a plug: <c>unplug meter 3</c> for three simulated seconds.</summary>
internal sealed record UnplugOrder(UnplugOrder.Plug What, TimeSpan Gap)
{
    public const string Expected = "a line such as: unplug meter 3, unplug fixture 5, unplug capacitanceMeter 2 (simulated seconds, above 0)";

    public enum Plug
    {
        Meter,
        Fixture,
        CapacitanceMeter,
    }

    public static UnplugOrder? Read(string line) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is ["unplug", var name, var text]
            && !char.IsAsciiDigit(name[0]) && Enum.TryParse<Plug>(name, ignoreCase: true, out var what)
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) && seconds is > 0 and <= 86400
            ? new(what, TimeSpan.FromSeconds(seconds))
            : null;
}
