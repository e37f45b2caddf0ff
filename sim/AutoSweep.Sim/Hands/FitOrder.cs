using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Sim.Hands;

/// <summary>What the LCR meter's display asks the hands to clip.</summary>
/// <param name="Output">The output that the parts are for; none where the text has no colon, or no number before it.</param>
/// <param name="Parts">The parts' running numbers, in the order of the text.</param>
internal sealed partial record FitOrder(int? Output, IReadOnlyList<int> Parts)
{
    private const string Old = "OLD";

    /// <summary>The text that says that fitting is over.</summary>
    public const string Over = "done";

    /// <summary>Whether it is not parts that are asked for, but the capacitor that came off the output.</summary>
    public bool IsOld { get; private init; }

    /// <summary>Reads <c>61: OLD</c>, <c>61: P00017 + P00022</c> or, of no output, <c>17 + 22</c>.</summary>
    public static FitOrder Read(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var before = colon < 0 ? [] : Numbers(text[..colon]);
        var after = text[(colon + 1)..];
        return new(before.Length > 0 ? before[0] : null, Numbers(after)) { IsOld = before.Length > 0 && after.Trim() == Old };
    }

    private static int[] Numbers(string text) =>
        [.. Number().Matches(text).Select(match => int.Parse(match.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex("[0-9]{1,6}")]
    private static partial Regex Number();
}
