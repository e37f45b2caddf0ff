using System.Globalization;
using System.Text.Json;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Scoring;

/// <summary>The score command as the product's demo runs it: a program of its own.</summary>
public class ScoreCommandTests
{
    private const string Header = "output,tone_hz,peak_pf,peak_sd_pf,half_width_pf,q,level_mv,readings,stop_reason\n";

    [Fact]
    public async Task A_good_job_ends_with_exit_code_0()
    {
        using var folder = new TemporaryFolder();
        var sweeps = folder.Write("sweeps.csv", Header + string.Concat(Rows()));
        var survey = folder.Write(
            "survey.csv", "output,expected_hz,tone_hz,level_mv,noise_mv,flags\n1,1,1,4,0.01,\n2,1,,,,\"dead, hum only\"\n");
        var (code, output, _) = await SimProgram.RunAsync("score", "--bench", "small", "--sweeps", sweeps, "--survey", survey, "--json");
        Assert.Equal(0, code);
        var score = JsonDocument.Parse(output).RootElement;
        Assert.True(score.GetProperty("good").GetBoolean());
        Assert.Equal(6, score.GetProperty("outputs").GetArrayLength());
        Assert.Equal("dead, hum only", score.GetProperty("flags")[0].GetProperty("flags").GetString());
    }

    [Fact]
    public async Task A_job_with_an_output_missing_ends_with_exit_code_1_and_says_which()
    {
        using var folder = new TemporaryFolder();
        var sweeps = folder.Write("sweeps.csv", Header + string.Concat(Rows().Skip(1)));
        var (code, output, _) = await SimProgram.RunAsync("score", "--bench", "small", "--sweeps", sweeps);
        Assert.Equal(1, code);
        Assert.Contains("missing", output, StringComparison.Ordinal);
        Assert.Contains("5 of 6 planned outputs", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_results_file_that_is_none_is_a_bad_file()
    {
        using var folder = new TemporaryFolder();
        var sweeps = folder.Write("sweeps.csv", "a,b\n1,2\n");
        var (code, _, errors) = await SimProgram.RunAsync("score", "--bench", "small", "--sweeps", sweeps);
        Assert.Equal(3, code);
        Assert.Contains("Expected:", errors, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Rows() => BenchFile.Read(BenchLocator.Bench("small")).Truth.Outputs
        .Where(truth => truth.Peak is not null)
        .Select(truth => string.Create(
            CultureInfo.InvariantCulture, $"{truth.Output},{truth.ToneHertz},{truth.Peak!.Picofarads:0},12.5,,,5.1,6,bound reached\n"));
}
