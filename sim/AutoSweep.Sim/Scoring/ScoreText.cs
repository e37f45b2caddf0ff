using System.Globalization;
using System.Text;

namespace AutoSweep.Sim.Scoring;

/// <summary>A score for people.</summary>
internal static class ScoreText
{
    public static string Of(JobScore score)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Bench {score.Bench}: peaks against the bench file's own answers");
        text.AppendLine("output     true pF    found pF   half-widths off   dB lost   readings");
        foreach (var output in score.Outputs) text.AppendLine(Line(output));
        foreach (var flag in score.Flags) text.AppendLine(Line(flag));
        text.AppendLine(CultureInfo.InvariantCulture,
            $"{score.Outputs.Count(output => output.Good)} of {score.Outputs.Count} planned outputs are there once and within "
            + $"{JobScorer.Limit * 100:0} % of their half-width; worst {score.WorstErrorInHalfWidths * 100:0.00} %, "
            + $"{score.WorstLossDecibels:0.0000} dB lost; median {score.MedianReadings:0.#} readings.");
        if (score.NotPlanned.Count > 0)
            text.AppendLine(CultureInfo.InvariantCulture, $"Not planned but in the file: {string.Join(", ", score.NotPlanned)}.");
        if (score.Surveyed > 0) text.AppendLine(CultureInfo.InvariantCulture, $"Surveyed once each: {score.Surveyed} outputs.");
        return text.ToString();
    }

    private static string Line(OutputScore output)
    {
        var remark = (output.Good, output.Times) switch
        {
            (true, _) => "",
            (_, 0) => "   missing",
            (_, > 1) => "   more than once",
            _ => "   too far off",
        };
        return string.Create(CultureInfo.InvariantCulture,
            $"{output.Output,6} {output.TruePicofarads,11:0} {output.FoundPicofarads,11:0} {output.ErrorInHalfWidths,17:+0.0000;-0.0000} "
            + $"{output.LossDecibels,9:0.00000} {output.Readings,10}{remark}");
    }

    private static string Line(FlagScore flag) => flag.Planted.Length == 0
        ? string.Create(CultureInfo.InvariantCulture, $"Output {flag.Output}: flagged \"{flag.Flags}\", nothing planted.")
        : string.Create(CultureInfo.InvariantCulture,
            $"Output {flag.Output}: planted {flag.Planted}, {(flag.Found ? "found" : "not found")} (\"{flag.Flags}\").");
}
