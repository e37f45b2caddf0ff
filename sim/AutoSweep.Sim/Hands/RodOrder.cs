using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Sim.Hands;

/// <summary>What the level meter's display asks the hands to do at the magnets.</summary>
/// <param name="Output">The output.</param>
/// <param name="OutwardMillimetres">How far its rod is to be moved, below 0 for in; none where it is only to be clipped.</param>
internal sealed partial record RodOrder(int Output, double? OutwardMillimetres)
{
    /// <summary>The text that says that levelling is over.</summary>
    public const string Over = "DONE";

    /// <summary>Reads <c>CLIP 61</c> or <c>61 OUT 0.300</c>; none for any other text.</summary>
    public static RodOrder? Read(string text)
    {
        if (Clip().Match(text) is { Success: true } clip) return new(Number(clip), null);
        if (Move().Match(text) is not { Success: true } move) return null;
        var millimetres = double.Parse(move.Groups[3].Value, CultureInfo.InvariantCulture);
        return new(Number(move), move.Groups[2].Value == "OUT" ? millimetres : -millimetres);
    }

    private static int Number(Match match) => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("^CLIP ([0-9]{1,3})$")]
    private static partial Regex Clip();

    [GeneratedRegex("^([0-9]{1,3}) (IN|OUT) ([0-9]*[.]?[0-9]+)$")]
    private static partial Regex Move();
}
