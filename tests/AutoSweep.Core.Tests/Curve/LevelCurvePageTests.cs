using System.Globalization;
using System.Text;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Tests.Curve.Support;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Curve;

/// <summary>docs/level-curve.md says what the program does; AUTOSWEEP_ACCEPT=1 writes its tables anew.</summary>
public class LevelCurvePageTests
{
    private static readonly MarkedPage Page = new("docs/level-curve.md");
    private static readonly TargetCurve Target = TargetCurve.Of(MadeCurve.Generator);

    [Fact]
    public void The_defaults_table_is_the_programs()
    {
        var options = new LevelOutlierOptions();
        Page.AssertPart("defaults", Table(
            ["what", "default", "meaning"],
            [
                ["`TargetCurve.UsualToleranceDecibels`", Figure(TargetCurve.UsualToleranceDecibels), "tolerance where nobody said otherwise, dB"],
                ["`LevelOutlierOptions.Threshold`", Figure(options.Threshold), "standard deviations of healthy outputs that count as far"],
                ["`LevelOutlierOptions.Neighbours`", Figure(options.Neighbours), "outputs under a local line, about an octave; the outermost have no weight"],
                ["`LevelOutlierOptions.RobustRounds`", Figure(options.RobustRounds), "times that the residuals weigh anew"],
                ["`LevelOutlierOptions.ShortRun`", Figure(options.ShortRun), "fewer outputs are compared with their median"],
                ["`LevelOutlierOptions.SharedScatterWeight`", Figure(options.SharedScatterWeight), "outputs' worth of the whole generator's scatter beside the group's own"],
                ["`LevelOutlierOptions.StepThreshold`", Figure(options.StepThreshold), "scatters that make a step"],
            ]));
    }

    [Fact]
    public void The_power_table_is_measured()
    {
        double[] sizes = [0, 2.5, 3, 4, 5];
        Page.AssertPart("power", Table(
            ["off by, dB", .. sizes.Select(Figure)],
            [["named an outlier, of 300 generators", .. sizes.Select(Found)]]));
    }

    [Fact]
    public void The_worked_example_is_computed()
    {
        double[] target = [5, 5, 5, 5.5, 6, 6, 6.5], level = [6.2, 6.4, 6.1, 3.9, 7.5, 8.6, 8.1];
        var comparison = CurveComparison.Of(
            new(CurveStand.AsFound, [.. level.Select((millivolts, index) => new LevelPoint(index + 1, millivolts, 0.01))]),
            new("example", "", [.. target.Select((millivolts, index) => new TargetPoint(index + 1, millivolts, 1))]));
        Page.AssertPart("example", Table(
            ["output", "target mV", "level mV", "difference dB", "less the gain", "± (95 %)", "verdict"],
            [
                .. comparison.Deviations.Select(one => new[]
                {
                    $"{one.Output}", Figure(target[one.Output - 1]), Figure(one.Millivolts), Figure(Math.Round(one.Decibels!.Value + comparison.GainDecibels, 2)),
                    Figure(Math.Round(one.Decibels!.Value, 2)), Figure(Math.Round(one.UncertaintyDecibels, 2)), $"`{one.Verdict}`",
                }),
                ["", "", "gain", $"**{Figure(Math.Round(comparison.GainDecibels, 2))}**", "", "", ""],
            ]));
    }

    private static string Found(double decibels)
    {
        const int Generators = 300;
        var random = new Random(23);
        var found = Enumerable.Range(0, Generators).Count(_ =>
        {
            var output = random.Next(1, 92);
            return MadeCurve.Judge(MadeCurve.Of(one => MadeCurve.Target(one) + (one == output ? decibels : 0), 0.5, random), Target)
                .Outliers.Any(one => decibels == 0 || one.Output == output);
        });
        return string.Create(CultureInfo.InvariantCulture, $"{100.0 * found / Generators:0} %");
    }

    private static string Table(string[] head, IEnumerable<string[]> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend([.. head.Select(_ => "---")]).Prepend(head))
            text.Append("| ").AppendJoin(" | ", row).Append(" |\n");
        return text.ToString();
    }

    private static string Figure(double value) => value.ToString(CultureInfo.InvariantCulture).Replace("-", "−", StringComparison.Ordinal);
}
