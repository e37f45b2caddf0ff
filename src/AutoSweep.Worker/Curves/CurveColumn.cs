using System.Text.RegularExpressions;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Worker.Curves;

/// <summary>A column of a curve file, as its head names it: <c>level_mv</c>, <c>Level (mV)</c>, <c>level [mV]</c>, <c>mV</c>.</summary>
/// <param name="Head">The head as it stands.</param>
/// <param name="Kind">What the column holds.</param>
/// <param name="Unit">The unit as it stands; empty where there is none.</param>
internal sealed partial record CurveColumn(string Head, CurveColumnKind Kind, string Unit)
{
    private static readonly Dictionary<string, CurveColumnKind> Names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["output"] = CurveColumnKind.Output,
        ["terminal"] = CurveColumnKind.Output,
        ["level"] = CurveColumnKind.Level,
        ["target"] = CurveColumnKind.Level,
        ["tolerance"] = CurveColumnKind.Tolerance,
    };

    /// <summary>The column under a head.</summary>
    internal static CurveColumn Of(string head)
    {
        if (LevelUnit.Of(head) is not null)
            return new(head, CurveColumnKind.Level, head.Trim());
        var parts = NameAndUnit().Match(head.Trim());
        var kind = Names.GetValueOrDefault(parts.Groups["name"].Value, CurveColumnKind.Other);
        return new(head, kind, parts.Groups["unit"].Value.Trim());
    }

    /// <summary>The known name that a head of no meaning is probably meant for; none where it resembles none.</summary>
    internal string? ProbablyMeant => NearestName.To(NameAndUnit().Match(Head.Trim()).Groups["name"].Value.ToLowerInvariant(), Names.Keys);

    [GeneratedRegex(@"^(?<name>.*?)(?:[\s_]*[\(\[](?<unit>[^\)\]]*)[\)\]]|[\s_]+(?<unit>\S+))?$", RegexOptions.ExplicitCapture)]
    private static partial Regex NameAndUnit();
}
