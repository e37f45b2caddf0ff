using System.Globalization;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Reports;

/// <summary>survey.csv and as-left.csv: one row a surveyed output, in ascending number. The header is fixed for scripts.</summary>
public static class SurveyCsv
{
    /// <summary>The file's text. Flags are separated by blanks; a tone that could not be counted is an empty cell.</summary>
    /// <param name="state">The job.</param>
    /// <param name="stage">The survey as found, or as left.</param>
    public static string Text(JobState state, JobStage stage = JobStage.Survey)
    {
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture }).ToText();
        writer.Header.Add("output", "expected_hz", "tone_hz", "level_mv", "noise_mv", "flags");
        foreach (var surveyed in state.SurveyOf(stage).Values)
        {
            using var row = writer.NewRow();
            row["output"].Format(surveyed.Output);
            row["expected_hz"].Set(Number(Expected(state.Profile!, surveyed.Output), "0.0000"));
            row["tone_hz"].Set(Number(surveyed.ToneHertz, "0.0000"));
            row["level_mv"].Set(Number(surveyed.Millivolts, "0.00000"));
            row["noise_mv"].Set(Number(surveyed.NoiseMillivolts, "0.00000"));
            row["flags"].Set(string.Join(' ', surveyed.Flags.Select(Name)));
        }

        return writer.ToString();
    }

    /// <summary>A finding's name in files.</summary>
    public static string Name(SurveyFinding finding) => finding switch
    {
        SurveyFinding.Dead => "dead",
        SurveyFinding.HumOnly => "hum_only",
        SurveyFinding.WrongTone => "wrong_tone",
        SurveyFinding.Swapped => "swapped",
        SurveyFinding.Unsteady => "unsteady",
        _ => "tone_not_counted",
    };

    private static double? Expected(GeneratorProfile profile, int number) =>
        profile.Outputs.Where(output => output.Number == number).Select(output => (double?)profile.ToneOf(output).Hertz).FirstOrDefault();

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}
