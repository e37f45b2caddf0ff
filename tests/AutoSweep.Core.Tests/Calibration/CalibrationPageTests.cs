using System.Globalization;
using System.Text;
using AutoSweep.Core.Calibration;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Calibration;

/// <summary>docs/fixture-calibration.md says what the program does; AUTOSWEEP_ACCEPT=1 writes its tables anew.</summary>
public class CalibrationPageTests
{
    private static readonly MarkedPage Page = new("docs/fixture-calibration.md");

    [Fact]
    public void The_plans_table_is_the_programs()
    {
        var (wired, typed) = (new CalibrationPlanOptions(), CalibrationPlanOptions.ByHand);
        Page.AssertPart("plan", Table(
            ["what", "with a meter on the wire", "typed"],
            [
                ["every relay alone", "yes", "yes"],
                ["each decade as a whole", "yes", "yes"],
                ["pairs within a decade", Word(wired.Pairs), Word(typed.Pairs)],
                ["random combinations", Figure(wired.RandomSets), Figure(typed.RandomSets)],
                ["the open fixture again after so many sets", Figure(wired.OpenEvery), Figure(typed.OpenEvery)],
                ["readings of each set", Figure(wired.Repeats), Figure(typed.Repeats)],
                ["readings of the usual box in all", Figure(Readings(wired)), Figure(Readings(typed))],
            ]));
    }

    [Fact]
    public void Every_finding_has_a_line_and_the_limits_are_the_programs()
    {
        Assert.All(Enum.GetNames<RelayFindingKind>(), name => Assert.Contains($"| `{name}` |", Page.Text, StringComparison.Ordinal));
        Assert.Contains($"above {Figure(new CalibrationSolverOptions().LeakLossTangent)} ", Page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_worked_example_is_solved_as_it_says() => Page.AssertPart("example", Example());

    private static string Example()
    {
        var solution = CalibrationSolver.Solve(Page.CodeAfter("readings").Split('\n', StringSplitOptions.RemoveEmptyEntries).SelectMany(Readings), 2,
            new(0.0005, 0.05), new());
        var rows = ((CalibratedValue[])[solution.Stray, .. solution.Relays]).Select((value, index) => (string[])
        [
            index == 0 ? "stray" : Figure(index), Picofarads(value.Picofarads), Picofarads(value.ExpandedUncertainty),
            Picofarads(value.NoiseStandardUncertainty), Picofarads(value.MeterStandardUncertainty), $"{value.CoverageFactor.ToString("0.00", CultureInfo.InvariantCulture)}",
        ]);
        return Table(["relay", "value", "± (95 %)", "u, noise", "u, meter", "t"], rows)
            + string.Create(CultureInfo.InvariantCulture, $"\nChance that sound relays scatter so about their sums: {solution.AdditivityProbability:0.00}. Found: {solution.Findings.Count}.\n");
    }

    private static IEnumerable<CalibrationReading> Readings(string line)
    {
        var set = line[..8].Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Where(word => word != "open").Aggregate(0u, (mask, relay) => mask | (1u << (int.Parse(relay, CultureInfo.InvariantCulture) - 1)));
        return line[8..].Split(' ').Select(value => new CalibrationReading(set, double.Parse(value, CultureInfo.InvariantCulture)));
    }

    private static int Readings(CalibrationPlanOptions options) => CalibrationPlan.Sets(16, options).Count * options.Repeats;

    private static string Word(bool value) => value ? "yes" : "no";

    private static string Picofarads(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Figure(double value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Table(string[] head, IEnumerable<string[]> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend([.. head.Select(_ => "---")]).Prepend(head))
            text.Append("| ").AppendJoin(" | ", row).Append(" |\n");
        return text.ToString();
    }
}
