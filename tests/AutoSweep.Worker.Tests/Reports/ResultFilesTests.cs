using System.Globalization;
using System.Text.Json;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Reports;

public sealed class ResultFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Theory]
    [InlineData("en-US")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_csv_files_are_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new(culture);
        try
        {
            using var job = Some.Job(_folder);
            job.Append(new StageStarted(JobStage.Survey, [1, 2]));
            job.Append(new StageStarted(JobStage.Sweep, [9, 10]));
            job.Append(Some.Surveyed(1));
            job.Append(Some.Surveyed(2, SurveyFinding.HumOnly, SurveyFinding.Unsteady));
            job.Append(Some.Swept(9));
            job.Append(new OutputSwept { Output = 10, ToneHertz = 0, Reason = PeakStopReason.LevelLost, Law = default, Readings = 0 });
            ResultFiles.Write(job);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Equal(
            """
            output,tone_hz,peak_pf,peak_sd_pf,half_width_pf,q,level_mv,readings,stop_reason
            9,740.1235,104567,61.3,7667.0,13.639,5.37200,6,bound_reached
            10,0.0000,,,,,,0,level_lost

            """,
            Text("sweeps.csv"));
        Assert.Equal(
            $"""
            output,expected_hz,tone_hz,level_mv,noise_mv,flags
            1,{Tone(0)},440.0004,4.25000,0.02100,
            2,{Tone(1)},,4.25000,0.02100,hum_only unsteady

            """,
            Text("survey.csv"));
    }

    [Fact]
    public void The_json_file_gives_the_peak_at_nominal_mains_too()
    {
        using var job = Some.Job(_folder);
        var nominal = Some.Profile.ToneOf(Some.Profile.Outputs[8]).Hertz;
        job.Append(new StageStarted(JobStage.Sweep, [9]));
        job.Append(Some.Swept(9) with { ToneHertz = nominal * 1.002, PeakPicofarads = 100_000 });
        ResultFiles.Write(job);

        using var json = JsonDocument.Parse(Text("results.json"));

        // f^-2: a mains 0.2 % high makes the peak 0.4 % low.
        Assert.Equal(100_400, json.RootElement.GetProperty("sweeps")[0].GetProperty("peakAtNominalMainsPicofarads").GetInt64());
    }

    [Fact]
    public void Every_stop_reason_has_a_word_of_its_own()
    {
        var words = Enum.GetValues<PeakStopReason>().Select(reason =>
        {
            var opened = new JournalEntry(1, default, new JobOpened("test", Some.Profile));
            var swept = new JournalEntry(2, default, Some.Swept(9) with { Reason = reason });
            return SweepsCsv.Text(JobState.Empty.Apply(opened).Apply(swept)).TrimEnd().Split(',')[^1];
        }).ToList();

        Assert.Equal(words.Count, words.Distinct().Count());
    }

    public void Dispose() => _folder.Dispose();

    private static string Tone(int index) => Some.Profile.ToneOf(Some.Profile.Outputs[index]).Hertz.ToString("0.0000", CultureInfo.InvariantCulture);

    private string Text(string file) => File.ReadAllText(_folder.File(file)).ReplaceLineEndings("\n");
}
